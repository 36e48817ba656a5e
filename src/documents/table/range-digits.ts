import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';

/** A table of hundreds of rows is still read at arm's length: decimals beyond a millimetre are of no use. */
const MOST_DIGITS = 3;

/** Of the unit shown; what rounding leaves of a round number. */
const ROUNDING_LEFT = 1e-6;

/** Decimals with which all of these ranges (m) print exactly in the unit shown, 0 to 3. */
export function rangeDigits(ranges: readonly number[], { range: unit }: Pick<DisplayUnits, 'range'>): number {
  for (let digits = 0; digits < MOST_DIGITS; digits += 1) {
    const scale = 10 ** digits;
    if (ranges.every((range) => isWhole(fromSi(range, unit) * scale, scale))) return digits;
  }
  return MOST_DIGITS;
}

const isWhole = (value: number, scale: number): boolean =>
  Math.abs(value - Math.round(value)) < ROUNDING_LEFT * scale;

/** The column that every table by range begins with. */
export const rangeColumn = (ranges: readonly number[], units: Pick<DisplayUnits, 'range'>) => ({
  name: 'range',
  unit: symbolOf(units.range),
  digits: rangeDigits(ranges, units),
});

/** One range in words, with as many decimals as it needs: "20 yd", "18.288 m". */
export const rangeWords = (range: number, units: Pick<DisplayUnits, 'range'>): string =>
  formatQuantity(range, units.range, rangeDigits([range], units));
