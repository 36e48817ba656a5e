import { at } from '../numerics/at.ts';
import { FOOT, YARD } from '../quantities/exact.ts';
import { type Metres, type MetresPerSecond, si } from '../quantities/quantity.ts';
import { type Tried, tried } from './agreement.ts';
import type { Calibration, CalibrationProblem } from './fit.ts';
import type { Measurement } from './measurement.ts';
import { type ParameterName, type Prior, parameterIn } from './parameters.ts';
import { isAtBow, unitsOf } from './units-of.ts';

/** One number of the setup file that, were it another, would make all marks fit. */
export type OneNumber =
  | { readonly kind: 'travel per unit'; readonly value: Metres; readonly stated: Metres }
  | { readonly kind: 'reading at zero'; readonly value: number; readonly stated: number }
  | { readonly kind: 'direction'; readonly increases: 'down' | 'up' }
  | { readonly kind: 'other unit'; readonly written: 'yd' | 'm'; readonly isZeroToo: boolean }
  | { readonly kind: 'launch speed'; readonly value: MetresPerSecond; readonly stated: MetresPerSecond }
  /** Travel of the strip over travel of the pin. */
  | { readonly kind: 'travel ratio'; readonly value: number; readonly stated: number }
  /** Where on the strip the line of the zero range should be, m from where it is. */
  | { readonly kind: 'line of zero'; readonly value: Metres }
  /** The lines were measured from the other side. */
  | { readonly kind: 'strip turned' };

/** Such a number, and how well all would agree with it. */
export interface OneNumberTried extends Tried {
  readonly cause: OneNumber;
}

/** A number counts as another one when it lies this many of its standard uncertainties from what was stated. */
const ANOTHER = 4;
/** A wide-open prior of a launch speed; no bow is outside it, m/s. */
const ANY_SPEED = { sd: 80, yardstick: FOOT };
/** No chronograph, and no other arrow of a bow, is farther off than this share (common practice, no source). */
const FARTHEST_SPEED = 0.15;
/** Of a travel per unit, over that of the file. */
const ANY_PITCH = { sd: 10, yardstick: 0.2 };
/** Of the reading at the zero range, m of travel. */
const ANY_PLACE = { sd: 0.5, yardstick: 0.004 };

/** Of the travel of a strip, over that of the file. */
const ANY_RATIO = { sd: 10, yardstick: 0.2 };

/** A number that explains many measurements explains so many of them, at much less work. */
const SAMPLE = 40;
/** And these of those that fit worst, which show that a number does not explain them. */
const WORST = 3;
/** An explanation has to leave at least this chance of what is left over. */
export const AGREES = 0.01;

type Trial = (problem: CalibrationProblem) => readonly OneNumberTried[];

/**
 * The fits in which one number of the file is another; those that would need an impossible bow are left out.
 *
 * @param fit of the file's own numbers, or null where there is none: of many measurements its worst are tried first
 */
export function oneNumbers(problem: CalibrationProblem, fit: Calibration | null): readonly OneNumberTried[] {
  const { measurements } = problem;
  if (measurements.length <= SAMPLE) return TRIALS.flatMap((trial) => trial(problem));
  const every = Math.ceil(measurements.length / SAMPLE);
  const worst = worstOf(fit);
  const sample = {
    ...problem,
    measurements: measurements.filter((_, i) => i % every === 0 || worst.includes(i)),
  };
  return TRIALS.filter((trial) =>
    trial(sample).some(({ agreement: { chance } }) => chance >= AGREES),
  ).flatMap((trial) => trial(problem));
}

function worstOf(fit: Calibration | null): readonly number[] {
  if (fit === null) return [];
  const sizes = fit.residuals.map(({ studentised }) => Math.abs(studentised));
  return [...sizes.keys()].toSorted((a, b) => at(sizes, b) - at(sizes, a)).slice(0, WORST);
}

const hasReadings = ({ rig, measurements }: CalibrationProblem): boolean =>
  rig.scale !== null && measurements.some(({ kind }) => kind === 'mark');

function travelPerUnit(problem: CalibrationProblem): readonly OneNumberTried[] {
  const { scale } = problem.rig;
  if (scale === null || !hasReadings(problem)) return [];
  return freed(problem, 'scale_ratio', ANY_PITCH).map(({ value, ...found }) => ({
    ...found,
    cause: {
      kind: 'travel per unit',
      value: si(scale.travelPerUnit * value),
      stated: si(scale.travelPerUnit),
    },
  }));
}

function readingAtZero(problem: CalibrationProblem): readonly OneNumberTried[] {
  const { scale } = problem.rig;
  if (scale === null || !hasReadings(problem)) return [];
  const wide = {
    sd: ANY_PLACE.sd / scale.travelPerUnit,
    yardstick: ANY_PLACE.yardstick / scale.travelPerUnit,
  };
  return freed(problem, 'scale_offset', wide).map(({ value, ...found }) => ({
    ...found,
    cause: { kind: 'reading at zero', value: scale.atZero + value, stated: scale.atZero },
  }));
}

function launchSpeed(problem: CalibrationProblem): readonly OneNumberTried[] {
  const { launchSpeed: stated } = problem.rig;
  return freed(problem, 'launch_speed', ANY_SPEED)
    .filter(({ value }) => Math.abs(value / stated - 1) < FARTHEST_SPEED)
    .map(({ value, ...found }) => ({
      ...found,
      cause: { kind: 'launch speed', value: si(value), stated },
    }));
}

/** The fit with one number that was known left to the marks; none when nothing was known of it, or it comes out as stated. */
function freed(
  problem: CalibrationProblem,
  name: ParameterName,
  wide: Omit<Prior, 'value'>,
): readonly (Tried & { readonly value: number })[] {
  const prior = problem.priors[name];
  if (prior === undefined || prior.yardstick !== undefined) return [];
  const found = tried({ ...problem, priors: { ...problem.priors, [name]: { ...prior, ...wide } } });
  if (found === null) return [];
  const value = parameterIn(found.calibration.values, name);
  return Math.abs(value - prior.value) > ANOTHER * prior.sd ? [{ ...found, value }] : [];
}

const hasPencilLines = ({ measurements }: CalibrationProblem): boolean =>
  measurements.some(({ kind }) => kind === 'pencil');

function travelRatio(problem: CalibrationProblem): readonly OneNumberTried[] {
  const stated = problem.priors.tape_ratio?.value;
  if (stated === undefined || !hasPencilLines(problem)) return [];
  const wide = { sd: ANY_RATIO.sd * stated, yardstick: ANY_RATIO.yardstick * stated };
  return freed(problem, 'tape_ratio', wide).map(({ value, ...found }) => ({
    ...found,
    cause: { kind: 'travel ratio', value, stated },
  }));
}

/** Of a strip alone: where a scale has readings, its place is the scale's. */
function lineOfZero(problem: CalibrationProblem): readonly OneNumberTried[] {
  if (problem.rig.scale !== null || !hasPencilLines(problem)) return [];
  return freed(problem, 'scale_offset', ANY_PLACE).map(({ value, ...found }) => {
    const { values } = found.calibration;
    // The pin of the zero range is lower than where the line stands by so much.
    const lower = value * values.scale_ratio;
    return {
      ...found,
      cause: { kind: 'line of zero', value: si(lower * parameterIn(values, 'tape_ratio')) },
    };
  });
}

function stripTurned(problem: CalibrationProblem): readonly OneNumberTried[] {
  if (!hasPencilLines(problem)) return [];
  const measurements = problem.measurements.map((shot) =>
    shot.kind === 'pencil' ? { ...shot, onTape: -shot.onTape } : shot,
  );
  const found = tried({ ...problem, measurements });
  return found === null ? [] : [{ ...found, cause: { kind: 'strip turned' } }];
}

function direction(problem: CalibrationProblem): readonly OneNumberTried[] {
  const { rig } = problem;
  const { scale } = rig;
  if (scale === null || !hasReadings(problem)) return [];
  const other = scale.direction === 1 ? -1 : 1;
  const found = tried({ ...problem, rig: { ...rig, scale: { ...scale, direction: other } } });
  return found === null
    ? []
    : [{ ...found, cause: { kind: 'direction', increases: other === 1 ? 'down' : 'up' } }];
}

/** All ranges in the other unit, with the zero range and without. */
const otherUnits = (problem: CalibrationProblem): readonly OneNumberTried[] =>
  inOtherUnit(problem).flatMap(({ cause, problem: other }): readonly OneNumberTried[] => {
    const found = tried(other);
    return found === null ? [] : [{ ...found, cause }];
  });

const TRIALS: readonly Trial[] = [
  travelPerUnit,
  readingAtZero,
  direction,
  otherUnits,
  launchSpeed,
  travelRatio,
  lineOfZero,
  stripTurned,
];

/** The problem with its ranges in the other unit, in every way that it could be meant. */
export function inOtherUnit(problem: CalibrationProblem): readonly {
  readonly cause: Extract<OneNumber, { kind: 'other unit' }>;
  readonly problem: CalibrationProblem;
}[] {
  const { rig, measurements } = problem;
  if (measurements.length === 0) return [];
  return unitsOf(measurements).flatMap((written) => {
    const times = written === 'yd' ? 1 / YARD : YARD;
    const other = { ...problem, measurements: measurements.map((shot) => farther(shot, times)) };
    return [false, true].map((isZeroToo) => ({
      cause: { kind: 'other unit' as const, written, isZeroToo },
      problem: isZeroToo ? { ...other, rig: { ...rig, zeroRange: si(rig.zeroRange * times) } } : other,
    }));
  });
}

const farther = (shot: Measurement, times: number): Measurement => {
  if (shot.kind === 'speed' && isAtBow(shot)) return shot;
  return shot.kind === 'drop'
    ? { ...shot, range: si(shot.range * times), aimedWith: si(shot.aimedWith * times) }
    : { ...shot, range: si(shot.range * times) };
};
