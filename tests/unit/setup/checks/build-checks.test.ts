import { describe, expect, it } from 'vitest';
import { EXAMPLE, SMALLEST } from '../example-text.ts';
import { problemsOf } from '../problems-of.ts';

const problems = (entry: string, text = EXAMPLE) =>
  problemsOf(`${text}builds:\n  - ${entry}\n`).map(({ path, line }) => ({ path, line }));
const paths = (entry: string, text = EXAMPLE) => problems(entry, text).map(({ path }) => path);

describe('a build', () => {
  it('may name a single key of a part that the arrow above has', () =>
    expect(paths('{ name: a, arrow: { parts: { vanes: { height: 0.4 in } } } }')).toEqual([]));
  it('must tell all that a part needs which the arrow above does not have', () => {
    const [problem] = problems('{ name: a, arrow: { parts: { collar: { length: 0.4 in } } } }');
    expect(problem?.path).toBe('builds.0.arrow.parts.collar.mass');
    expect(problem?.line).toBe(EXAMPLE.trimEnd().split('\n').length + 2);
  });
  it('must tell shaft and point when the arrow above has no parts', () =>
    expect(paths('{ name: a, arrow: { parts: { insert: { mass: 40 gr } } } }', SMALLEST)).toEqual([
      'builds.0.arrow.parts.shaft',
      'builds.0.arrow.parts.point',
    ]));
  it('that turns to fixed blades must tell them', () => {
    expect(paths('{ name: a, arrow: { parts: { point: { shape: fixed_blade } } } }')).toEqual([
      'builds.0.arrow.parts.point.blades',
    ]);
    const blades = 'blades: { count: 3, length: 1.1 in, cutting_diameter: 1.1 in, thickness: 0.04 in }';
    expect(paths(`{ name: a, arrow: { parts: { point: { shape: fixed_blade, ${blades} } } } }`)).toEqual([]);
  });
  it('needs a name of its own', () =>
    expect(
      problemsOf(`${EXAMPLE}builds:\n  - { name: a }\n  - { name: a }\n`).map(({ path }) => path),
    ).toEqual(['builds.1.name']));
});
