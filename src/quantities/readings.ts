import type { Unit } from 'mathjs';
import type { Dimension } from './dimension.ts';
import { isOfDimension } from './dimension-of.ts';
import { spokenNumber } from './spoken-number.ts';
import { spokenUnit } from './spoken-unit.ts';
import { trimmed } from './trimmed.ts';
import { writtenQuantity } from './written-quantity.ts';

/** One thing that a text may mean. */
export interface Reading {
  /** In SI. */
  readonly value: number;
  /** In SI as a difference or an uncertainty: without the offset of a temperature. */
  readonly difference: number;
  /** As it is to be typed: `28.5 in`. */
  readonly text: string;
  /** Whether the number, its sign or its kind had to be worked out; not for another spelling of the unit. */
  readonly workedOut: boolean;
}

/**
 * What a text may mean as a quantity of a kind, the likelier first: none when it cannot be read, two where a comma may stand for
 * thousands or for a decimal point.
 */
export function readingsOf(text: string, dimension: Dimension): readonly Reading[] {
  const plain = ofKind(writtenQuantity(text, dimension), dimension);
  if (plain !== undefined) return [readingOf(plain, dimension, text.trim(), false)];
  const number = spokenNumber(text);
  if (number === undefined) return [];
  const unit =
    number.rest === '' && dimension === 'ratio'
      ? { unit: '', byKind: false }
      : spokenUnit(number.rest, dimension);
  if (unit === undefined) return [];
  return number.values.flatMap((value): readonly Reading[] => {
    const written = ofKind(writtenQuantity(`${value} ${unit.unit}`, dimension), dimension);
    if (written === undefined) return [];
    return [readingOf(written, dimension, shown(value, unit.unit), number.workedOut || unit.byKind)];
  });
}

/** The `+ 0` makes a zero of a negative zero. */
const readingOf = (written: Unit, dimension: Dimension, text: string, workedOut: boolean): Reading => ({
  value: dimension === 'temperature' ? written.toNumber('K') : written.value + 0,
  difference: written.value + 0,
  text,
  workedOut,
});

const ofKind = (written: Unit | undefined, dimension: Dimension): Unit | undefined =>
  written !== undefined && isOfDimension(written, dimension) ? written : undefined;

/** As it is to be typed. */
const shown = (value: string, unit: string): string =>
  `${trimmed(Number(value))} ${unit === 'percent' ? '%' : unit}`.trimEnd();
