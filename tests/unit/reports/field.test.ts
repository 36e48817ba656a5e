import { describe, expect, it } from 'vitest';
import { displayUnits } from '../../../src/quantities/display-units.ts';
import { dataOf, type Field, tableOf } from '../../../src/reports/field.ts';

/** A height of 0.25 m for every metre of range. */
const steep: readonly Field<number>[] = [
  { key: 'height_per_range', name: 'height', unit: 'smallLength', per: 'range', digits: 2, of: (row) => row },
];
const shown = (system: 'imperial' | 'metric') => tableOf(steep, [0.25], displayUnits(system));

describe('a field counted for a unit of another', () => {
  it('is 9 in for every yard, a yard being 36 in', () => {
    expect(shown('imperial').columns).toEqual([{ name: 'height', unit: 'in/yd', digits: 2 }]);
    // The factors are exact; the difference is what two divisions round.
    expect(Math.abs(Number(shown('imperial').rows[0]?.[0]) - 9)).toBeLessThan(1e-14 /* in/yd */);
  });
  it('is 250 mm for every metre', () => {
    expect(shown('metric').columns).toEqual([{ name: 'height', unit: 'mm/m', digits: 2 }]);
    expect(Math.abs(Number(shown('metric').rows[0]?.[0]) - 250)).toBeLessThan(1e-12 /* mm/m */);
  });
  it('stays in SI for programs', () => expect(dataOf(steep, [0.25])).toEqual([{ height_per_range: 0.25 }]));
});
