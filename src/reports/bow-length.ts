import type { DisplayUnits } from '../quantities/display-units.ts';
import { formatQuantity } from '../quantities/format.ts';

/** Decimals of a length on the bow or the arrow: so many in inches, one less in millimetres. */
export const bowDigits = ({ bowLength }: Pick<DisplayUnits, 'bowLength'>, inches: number): number =>
  bowLength === 'in' ? inches : Math.max(0, inches - 1);

/** A length on the bow or the arrow in words: "28.50 in", "723.9 mm". */
export const bowLengthWords = (
  length: number,
  units: Pick<DisplayUnits, 'bowLength'>,
  inches: number,
): string => formatQuantity(length, units.bowLength, bowDigits(units, inches));
