import { unlessNumericalError } from '../numerics/numerical-error.ts';
import { INCH, YARD } from '../quantities/exact.ts';
import { type Metres, si } from '../quantities/quantity.ts';
import type { Calibration } from './fit.ts';
import type { Measurement } from './measurement.ts';
import { isSightMark, type SightMark, withWritten, writtenOf } from './sight-mark.ts';
import { unitsOf } from './units-of.ts';
import { predictedSd, wouldRead as wouldReadIn } from './would-read.ts';

/** How a wrong mark may have come about. */
type Slip =
  | { readonly kind: 'digits swapped'; readonly meant: number }
  /** The group's height above the aim was written with the other sign, or its number was of another unit. */
  | HeightSlip
  /** The number of another range. */
  | { readonly kind: 'reading of another range'; readonly range: Metres }
  /** The target stood as many of the other unit away. */
  | { readonly kind: 'other unit'; readonly unit: 'yd' | 'm' }
  | { readonly kind: 'one digit'; readonly meant: number };

type HeightSlip =
  | { readonly kind: 'height turned'; readonly meant: Metres }
  | { readonly kind: 'height in another unit'; readonly really: 'cm' | 'in'; readonly meant: Metres };

/** A mark that does not belong, beside what the others say of it. */
export interface WrongMark {
  readonly mark: SightMark;
  /** A reading, or metres on the strip: what it would have to be. */
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
export function wrongMark(rest: Calibration, mark: SightMark, all: readonly Measurement[]): WrongMark {
  const { written: wouldRead, heightPer } = wouldReadIn(rest, mark);
  const wouldReadSd =
    Math.hypot(predictedSd(rest, withWritten(mark, wouldRead)), mark.sd) / Math.abs(heightPer);
  const written = writtenOf(mark);
  const number = NUMBER_OF[mark.kind];
  const off = Math.abs(written - wouldRead);
  const isNear = (one: number, other: number): boolean =>
    Math.abs(one - other) <= Math.min(NEAR * wouldReadSd, (1 - EXPLAINED) * off);
  const isOfRange = (range: Metres): boolean => {
    const other = readOr(rest, mark, range);
    return other !== null && isNear(other, written);
  };
  const meant = (numbers: readonly number[]): number | undefined =>
    numbers
      .map((one) => one * number)
      .filter((one) => isNear(one, wouldRead))
      .toSorted((a, b) => Math.abs(a - wouldRead) - Math.abs(b - wouldRead))[0];
  return { mark, wouldRead, wouldReadSd, slip: slipOf() };

  function slipOf(): Slip | null {
    const copied = all.find((other) => isSightMark(other) && isCopyOf(mark, other));
    if (copied !== undefined) return { kind: 'reading of another range', range: copied.range };
    const height = heightSlips(mark).find(({ meant: vertical }) => {
      const there = readOr(rest, { ...mark, vertical }, mark.range);
      return there !== null && isNear(there, written);
    });
    if (height !== undefined) return height;
    const digits = Number((written / number).toPrecision(DIGITS_WRITTEN));
    const swapped = meant(digitsSwapped(digits));
    if (swapped !== undefined) return { kind: 'digits swapped', meant: swapped };
    const unit = otherUnits(all).find(({ times }) => isOfRange(si(mark.range * times)));
    if (unit !== undefined) return { kind: 'other unit', unit: unit.really };
    const range = otherRanges(mark, all).find(isOfRange);
    if (range !== undefined) return { kind: 'reading of another range', range };
    const digit = meant(oneDigitOff(digits));
    return digit === undefined ? null : { kind: 'one digit', meant: digit };
  }
}

/** What the height of a group may really have been. */
const heightSlips = ({ vertical }: SightMark): readonly HeightSlip[] =>
  vertical === 0
    ? []
    : [
        { kind: 'height turned', meant: si(-vertical) },
        { kind: 'height in another unit', really: 'cm', meant: si((vertical * CENTIMETRE) / INCH) },
        { kind: 'height in another unit', really: 'in', meant: si((vertical * INCH) / CENTIMETRE) },
      ];
const CENTIMETRE = 0.01;

/** Null where the arrow does not get to the range. */
const readOr = (rest: Calibration, mark: SightMark, range: Metres): number | null =>
  unlessNumericalError(() => wouldReadIn(rest, mark, range).written);

/** The same number at another range was copied from the wrong line. */
const isCopyOf = (mark: SightMark, other: SightMark): boolean =>
  other.kind === mark.kind && other.range !== mark.range && writtenOf(other) === writtenOf(mark);

/** What a mark's number counts: units of the scale, or millimetres on the strip. */
const NUMBER_OF = { mark: 1, pencil: 0.001 } as const;
/** More than anyone writes; what a division adds lies beyond. */
const DIGITS_WRITTEN = 9;

const otherUnits = (all: readonly Measurement[]) =>
  unitsOf(all).map((written) =>
    written === 'yd' ? { really: 'm' as const, times: 1 / YARD } : { really: 'yd' as const, times: YARD },
  );

/** Ranges whose number may have been written instead: those that were shot first, then round ones near by. */
function otherRanges({ range }: SightMark, all: readonly Measurement[]): readonly Metres[] {
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
export function digitsSwapped(reading: number): readonly number[] {
  const sign = reading < 0 ? -1 : 1;
  const size = Math.abs(reading);
  const swapped = [`${size}`, `0${size}`, size.toFixed(1)].flatMap(swappedIn);
  return [...new Set(swapped)].map((one) => sign * one);
}

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
