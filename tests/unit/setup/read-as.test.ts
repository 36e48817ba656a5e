import { expect, it } from 'vitest';
import { readSetup } from '../../../src/setup/read.ts';
import { EXAMPLE } from './example-text.ts';

it('what was not typed as the program writes it is kept with its path, lists and builds too', () => {
  const text = EXAMPLE.replace('68 lbf', '68#')
    .replace('speed: 281 fps', 'speed: 281')
    .replace('lateral: -1 in', 'lateral: 1" left')
    .concat('builds:\n  - { name: heavy, arrow: { parts: { point: { mass: 150 } } } }\n');
  expect(readSetup(text, 'setup.yaml').readAs).toEqual([
    { path: 'bow.peak_draw_weight', found: '68#', readAs: '68 lbf' },
    { path: 'launch.speed', found: '281', readAs: '281 fps' },
    { path: 'marks.1.lateral', found: '1" left', readAs: '-1 in' },
    { path: 'builds.0.arrow.parts.point.mass', found: '150', readAs: '150 gr' },
  ]);
});

it('a file in the program’s own spelling has none', () =>
  expect(readSetup(EXAMPLE, 'setup.yaml').readAs).toBeUndefined());

it('a decimal comma between { } is read as one', () => {
  const text = EXAMPLE.replace('height: 0.5 in', 'height: 0,5 in');
  expect(readSetup(text, 'setup.yaml').arrow.parts?.vanes?.height).toBeCloseTo(0.0127, 12 /* m */);
});

it('a reading in fractions or with a comma counts as finely as it is written', () => {
  const step = (reading: string) =>
    readSetup(
      EXAMPLE.replace('reading: 31.9', `reading: "${reading}"`).replace('reading: 12.4', 'reading: 12'),
      'setup.yaml',
    ).readingStep;
  expect([step('31'), step('31,9'), step('31 1/2'), step('31 1/4')]).toEqual([1, 0.1, 0.1, 0.01]);
});
