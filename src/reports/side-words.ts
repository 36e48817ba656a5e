import { formatQuantity } from '../quantities/format.ts';
import type { Session } from './session.ts';

type Units = Session['units'];

/** Decimals of a length on the target. */
export const targetDigits = ({ smallLength }: Units): number => (smallLength === 'in' ? 2 : 0);

/** A sideways miss in words: "1.20 in left". */
export function sideWords(lateral: number, units: Units): string {
  const size = formatQuantity(Math.abs(lateral), units.smallLength, targetDigits(units));
  return lateral === 0 ? size : `${size} ${lateral < 0 ? 'left' : 'right'}`;
}

/** A miss of height in words: "1.20 in low". */
export function heightWords(height: number, units: Units): string {
  const size = formatQuantity(Math.abs(height), units.smallLength, targetDigits(units));
  return height === 0 ? size : `${size} ${height < 0 ? 'low' : 'high'}`;
}

/** The way a sight or a bow turns, as the archer sees it. */
export const turnWord = (angle: number): string => (angle < 0 ? 'anticlockwise' : 'clockwise');
