import { formatQuantity } from '../quantities/format.ts';
import type { Session } from './session.ts';

type Units = Session['units'];

/** Decimals of a length on the target. */
export const targetDigits = ({ smallLength }: Units): number => (smallLength === 'in' ? 2 : 0);

/** Of a length in a first line: one less. */
export const roughDigits = ({ smallLength }: Units): number => (smallLength === 'in' ? 1 : 0);

/** A sideways miss in words: "1.20 in left". */
export const sideWords = (lateral: number, units: Units, digits = targetDigits(units)): string =>
  towards(lateral, units, digits, ['left', 'right']);

/** A miss of height in words: "1.20 in low". */
export const heightWords = (height: number, units: Units, digits = targetDigits(units)): string =>
  towards(height, units, digits, ['low', 'high']);

/** The size of a miss and its side; what rounds to zero has none. */
function towards(
  miss: number,
  { smallLength }: Units,
  digits: number,
  [negative, positive]: readonly [string, string],
): string {
  const size = formatQuantity(Math.abs(miss), smallLength, digits);
  if (/^[0.]+ /.test(size)) return size;
  return `${size} ${miss < 0 ? negative : positive}`;
}

/** The way a sight or a bow turns, as the archer sees it. */
export const turnWord = (angle: number): string => (angle < 0 ? 'counterclockwise' : 'clockwise');
