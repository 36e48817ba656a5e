import { describe, expect, it } from 'vitest';
import { displayUnits } from '../../../src/quantities/display-units.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { startsAcross } from '../../../src/reports/start-misses.ts';

const miss = (range: number, right: number, high: number) => ({
  range: si<'m'>(range),
  right: si<'m'>(right),
  high: si<'m'>(high),
});

describe('startsAcross', () => {
  it('has a row for every range, and right and high of every start across', () => {
    const { columns, rows } = startsAcross(
      [
        { name: 'clean', misses: [miss(20, 0, 0.001), miss(40, 0.002, 0.003)] },
        { name: 'tail left', misses: [miss(20, 0.004, 0.005), miss(40, 0.006, 0.007)] },
      ],
      displayUnits('metric'),
    );
    expect(columns.map(({ name, unit }) => `${name} (${unit})`)).toEqual([
      'range (m)',
      'clean: right (mm)',
      'clean: high (mm)',
      'tail left: right (mm)',
      'tail left: high (mm)',
    ]);
    expect(rows).toEqual([
      [20, 0, 1, 4, 5],
      [40, 2, 3, 6, 7],
    ]);
  });
  it('prints no number for a miss that is missing', () =>
    expect(() =>
      startsAcross(
        [
          { name: 'clean', misses: [miss(20, 0, 0)] },
          { name: 'tail left', misses: [] },
        ],
        displayUnits('metric'),
      ),
    ).toThrow(RangeError));
});
