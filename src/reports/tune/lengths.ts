import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';

type Units = Pick<DisplayUnits, 'smallLength' | 'range' | 'bowLength' | 'speed' | 'mass'>;

/** A length on the target or in paper, with decimals of an inch or of a millimetre. */
export const onTarget = (length: number, { smallLength }: Units, inches = 1): string =>
  formatQuantity(length, smallLength, smallLength === 'in' ? inches : Math.max(0, inches - 1));

/** A length of the sight: to a hundredth of an inch. */
export const onSight = (length: number, { smallLength }: Units): string =>
  formatQuantity(length, smallLength, smallLength === 'in' ? 2 : 1);

/** A range as far as it was stepped off. */
export const atRange = (range: number, { range: unit }: Units): string => {
  const whole = formatQuantity(range, unit, 0);
  const exact = formatQuantity(range, unit, 2);
  return Number.parseFloat(whole) === Number.parseFloat(exact) ? whole : exact;
};

/** Where the rest stands or goes: millimetres in either system, as rests are measured. */
export const ofRest = (length: number): string => formatQuantity(length, 'mm', 1);

/** A move of the rest as the trade says it, a part of an inch, with millimetres. */
export function moveOfRest(length: number): string {
  const thirtySeconds = (Math.abs(length) / 0.0254) * 32;
  const parts = [0.5, 1, 2].find((part) => Math.abs(thirtySeconds - part) < 0.01);
  const fraction = parts === undefined ? null : { 0.5: '1/64 in', 1: '1/32 in', 2: '1/16 in' }[parts];
  const millimetres = formatQuantity(Math.abs(length), 'mm', 1);
  return fraction === null || fraction === undefined ? millimetres : `${fraction} (${millimetres})`;
}

export const toSide = (value: number): string => (value < 0 ? 'left' : 'right');
export const toHeight = (value: number): string => (value < 0 ? 'low' : 'high');
