import { expect, it } from 'vitest';
import { varyCells } from '../../../../src/reports/vary/cells.ts';
import { EXAMPLE } from '../../setup/example-text.ts';

const speedsAt = (text: string, values: readonly string[]) =>
  varyCells({
    text,
    path: 'setup.yaml',
    uncalibrated: true,
    axes: [{ name: 'bow.peak_draw_weight', values }],
    from: 0,
    to: values.length,
    ranges: [30],
    crosswind: 4,
  }).map((cell) => ('failure' in cell ? cell.failure : (cell.facts.launchSpeed ?? Number.NaN)));

it('a bow at another draw weight is faster by the root of the two weights', () => {
  const [slow, own] = speedsAt(EXAMPLE, ['60 lbf', '68 lbf']).map(Number);
  expect((slow ?? Number.NaN) / (own ?? Number.NaN)).toBeCloseTo(Math.sqrt(60 / 68), 12);
});

it('says so, and prints no speed, where nothing tells which draw weight the speed was measured at', () => {
  const unnamed = EXAMPLE.replace(/ {2}peak_draw_weight: .*\n/, '');
  for (const found of speedsAt(unnamed, ['60 lbf', '68 lbf']))
    expect(found).toMatch(/does not name the one .* write bow\.peak_draw_weight/);
});
