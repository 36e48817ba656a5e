import { at } from '../numerics/at.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import { YARD } from '../quantities/exact.ts';
import { type Metres, si } from '../quantities/quantity.ts';
import { marksFor } from '../sight/marks.ts';
import { readingAt as readingOf } from '../sight/scale.ts';
import type { Calibration } from './fit.ts';
import { markUncertainty } from './mark-uncertainty.ts';
import type { Measurement, ShotMark } from './measurement.ts';
import { unitsOf } from './one-number.ts';
import { TRAVEL_SCALE } from './parameters.ts';

/** How a wrong mark may have come about. */
export type Slip =
  | { readonly kind: 'digits swapped'; readonly meant: number }
  /** The number of another range. */
  | { readonly kind: 'reading of another range'; readonly range: Metres }
  /** The target stood as many of the other unit away. */
  | { readonly kind: 'other unit'; readonly unit: 'yd' | 'm' }
  | { readonly kind: 'one digit'; readonly meant: number };

/** A mark that does not belong, beside what the others say of it. */
export interface WrongMark {
  readonly mark: ShotMark;
  readonly wouldRead: number;
  readonly wouldReadSd: number;
  /** Null where no usual slip gives the reading that was written. */
  readonly slip: Slip | null;
}

/** A slip has to bring the reading this near to what would fit, in standard uncertainties of the two. */
const NEAR = 3;
/** And to at least this share of the way that it was off. */
const EXPLAINED = 0.75;
/** Round ranges that may have been taken for one another lie at most this far apart, in the unit of the file. */
const NEIGHBOURS = { step: 10, reach: 20 };

/**
 * What the rest of the marks say of one that does not belong, and the slip that would explain it.
 *
 * @param rest the fit without it
 * @param all what was measured
 */
export function wrongMark(rest: Calibration, mark: ShotMark, all: readonly Measurement[]): WrongMark {
  const read = (range: Metres): number => readingAt(rest, range) + mark.vertical / perUnit;
  const table = marksFor(rest.rig, [mark.range]);
  const sure = at(markUncertainty(rest, table), 0);
  const perUnit = sure.heightPerUnit * (rest.rig.scale ?? TRAVEL_SCALE).direction;
  const wouldRead = read(mark.range);
  const wouldReadSd = Math.hypot(sure.readingSd, mark.sd / perUnit);
  const off = Math.abs(mark.reading - wouldRead);
  const isNear = (one: number, other: number): boolean =>
    Math.abs(one - other) <= Math.min(NEAR * wouldReadSd, (1 - EXPLAINED) * off);
  const meant = (readings: readonly number[]): number | undefined =>
    readings
      .filter((reading) => isNear(reading, wouldRead))
      .toSorted((a, b) => Math.abs(a - wouldRead) - Math.abs(b - wouldRead))[0];
  return { mark, wouldRead, wouldReadSd, slip: slipOf() };

  function slipOf(): Slip | null {
    const swapped = meant(digitsSwapped(mark.reading));
    if (swapped !== undefined) return { kind: 'digits swapped', meant: swapped };
    const unit = otherUnits(all).find(({ times }) => isNear(read(si(mark.range * times)), mark.reading));
    if (unit !== undefined) return { kind: 'other unit', unit: unit.really };
    const range = otherRanges(mark, all).find((other) => isNear(read(other), mark.reading));
    if (range !== undefined) return { kind: 'reading of another range', range };
    const digit = meant(oneDigitOff(mark.reading));
    return digit === undefined ? null : { kind: 'one digit', meant: digit };
  }
}

/** No number, which is near to nothing, where the arrow does not get there. */
function readingAt({ rig }: Calibration, range: Metres): number {
  try {
    const { travel } = at(marksFor(rig, [range]).marks, 0);
    return readingOf(rig.scale ?? TRAVEL_SCALE, travel);
  } catch (error) {
    if (error instanceof NumericalError) return Number.NaN;
    throw error;
  }
}

const otherUnits = (all: readonly Measurement[]) =>
  unitsOf(all).map((written) =>
    written === 'yd' ? { really: 'm' as const, times: 1 / YARD } : { really: 'yd' as const, times: YARD },
  );

/** Ranges whose number may have been written instead: those that were shot first, then round ones near by. */
function otherRanges({ range }: ShotMark, all: readonly Measurement[]): readonly Metres[] {
  const shot = all.flatMap((other) => (other.range === range ? [] : [other.range]));
  const [unit] = unitsOf(all);
  const size = unit === 'm' ? 1 : YARD;
  const { step, reach } = NEIGHBOURS;
  const first = step * Math.ceil((range / size - reach) / step);
  const round = Array.from({ length: Math.floor((2 * reach) / step) + 1 }, (_, i) =>
    si<'m'>((first + i * step) * size),
  );
  return [...shot, ...round.filter((other) => other > 0 && Math.abs(other - range) > size)];
}

/**
 * Every number that two neighbouring digits of this one make in each other's place; a decimal point may stand between, and a 0 at
 * either end that nobody writes.
 */
export const digitsSwapped = (reading: number): readonly number[] => [
  ...new Set([`${reading}`, `0${reading}`, reading.toFixed(1)].flatMap(swappedIn)),
];

const swappedIn = (text: string): readonly number[] =>
  [...text].flatMap((digit, i): readonly number[] => {
    const next = text[i + 1] === '.' ? i + 2 : i + 1;
    const other = text[next];
    if (!isDigit(digit) || !isDigit(other) || other === digit) return [];
    return [Number(text.slice(0, i) + other + text.slice(i + 1, next) + digit + text.slice(next + 1))];
  });

/** Every number of which one digit is another. */
function oneDigitOff(reading: number): readonly number[] {
  const text = String(reading);
  return [...text].flatMap((digit, i): readonly number[] =>
    isDigit(digit)
      ? [...DIGITS]
          .filter((other) => other !== digit)
          .map((other) => Number(text.slice(0, i) + other + text.slice(i + 1)))
      : [],
  );
}

const DIGITS = '0123456789';
const isDigit = (text: string | undefined): text is string => text !== undefined && DIGITS.includes(text);
