import { describe, expect, it } from 'vitest';
import { buildCurves, compare } from '../../../../src/advice/builds/comparison.ts';
import { itemsOf } from '../../../../src/documents/page/drawing.ts';
import { displayUnits } from '../../../../src/quantities/display-units.ts';
import { type ComparisonContent, layOutComparison } from '../../../../src/reports/compare/sheet-layout.ts';
import { bowWith, candidate, tallVanes, withPoint } from '../../advice/invented-candidates.ts';
import { inkBox, inkOutside, overlaps, unprintableEdge, withRole } from '../../documents/ink-box.ts';
import { yards } from '../../sight/invented-rig.ts';

const contentOf = (count: number, units: 'imperial' | 'metric'): ComparisonContent => {
  const points = Array.from({ length: count - 1 }, (_, i) =>
    candidate(`point ${150 + 25 * i}`, withPoint(150 + 25 * i)),
  );
  const comparison = compare([bowWith([candidate('tall vanes', tallVanes), ...points])], {
    ranges: [20, 40, 60, 80].map(yards),
    crosswind: 4.4704,
    ring: 0.2,
  });
  return {
    comparison,
    curves: buildCurves(comparison, [20, 30, 40, 50, 60, 70, 80].map(yards)),
    units: displayUnits(units),
    title: 'Invented bow: which build to buy',
    subtitle: ['now: an invented arrow', 'tall vanes: vanes height 0.65 in'],
    choice: 'What to choose at 80 yd: to shoot flattest tall vanes.',
    notes: ['A note about the energy of the bow.', 'Another one.'],
    cautions: ['Every shot needs a backstop.', 'The local hunting code goes before this table.'],
  };
};

describe.each([
  ['a4', 3, 'imperial'],
  ['letter', 3, 'metric'],
  ['a4', 1, 'metric'],
  ['letter', 5, 'imperial'],
] as const)('a comparison on %s of %i other builds, %s', (paper, count, units) => {
  const drawing = layOutComparison(contentOf(count, units), paper);
  const items = drawing.pages.flatMap(itemsOf);

  it('is one page with all ink on the printable part of it', () => {
    expect(drawing.pages).toHaveLength(1);
    for (const page of drawing.pages) expect(inkOutside(page, unprintableEdge)).toEqual([]);
  });
  it('has no text on another', () => {
    const texts = items.flatMap((item) =>
      item.kind === 'text' && item.text.trim() !== '' ? [{ ...inkBox(item), text: item.text }] : [],
    );
    expect(overlaps(texts)).toEqual([]);
  });
  it('names every build in the tables and overlays a curve of each in every plot', () => {
    const words = items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    expect(words).toEqual(expect.arrayContaining(['now', 'tall vanes', 'mass', 'stiffness, pushed']));
    const plots = withRole(items, 'text', 'plot-title').map(({ text }) => text);
    expect(plots.slice(0, 3)).toEqual([expect.stringMatching(/^Path, sighted in at/), 'Speed', 'Energy']);
    expect(withRole(items, 'polyline', 'curve')).toHaveLength(plots.length * (count + 1));
  });
});

it('refuses more builds than the page has room for', () => {
  expect(() => layOutComparison(contentOf(24, 'imperial'), 'a4')).toThrow(/table|fewer builds/);
});
