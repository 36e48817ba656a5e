import { YARD } from '../quantities/exact.ts';
import type { Measurement } from './measurement.ts';

/** A chronograph at the bow stands where it stands. */
export const isAtBow = (shot: Pick<Measurement, 'range'> & { readonly isAtBow?: true }): boolean =>
  shot.isAtBow === true;

/** A range this near to a whole one, in the unit, was written in it. */
const WHOLE = 1e-6;

/** The units that ranges may have been written in: the one in which all are whole, or either where both or none is. */
export function unitsOf(measurements: readonly Pick<Measurement, 'range'>[]): readonly ('yd' | 'm')[] {
  const isWhole = (size: number): boolean =>
    measurements
      .filter((shot) => !isAtBow(shot))
      .every(({ range }) => Math.abs(range / size - Math.round(range / size)) < WHOLE);
  const [yards, metres] = [isWhole(YARD), isWhole(1)];
  if (yards === metres) return ['yd', 'm'];
  return yards ? ['yd'] : ['m'];
}
