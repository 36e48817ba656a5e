import {
  type BuildReadings,
  buildReadings,
  FACTS,
  type Fact,
  ROW_VALUES,
  type RowValue,
} from './build-readings.ts';
import type { BowAndArrows } from './candidate.ts';
import { combined, type ErrorForm, mainCause, standardError } from './error-form.ts';
import { recordOf } from './record-of.ts';
import { tunedBuilds } from './tuned-build.ts';
import {
  type ComparedQuestions,
  type Uncertain,
  type UncertainReadings,
  uncertainReadings,
} from './uncertain-readings.ts';

/** How a number of one build differs from the base's. */
export interface Difference {
  readonly value: number;
  /** Standard error of the difference; what both builds share has cancelled. */
  readonly sd: number;
  /** Whether it is larger than chance and ignorance explain, at the confidence of the comparison. */
  readonly real: boolean;
  /** The kind of cause with the largest share of the error; null when there is none. */
  readonly mostly: string | null;
}

/** One build against the base. */
export interface Contrast {
  readonly readings: UncertainReadings;
  readonly facts: Readonly<Record<Fact, Difference | null>>;
  readonly rows: readonly (Readonly<Record<RowValue, Difference | null>> & {
    /** Where this build hits with the base's mark set, nothing else touched; high positive, m. */
    readonly withBaseMark: Difference;
  })[];
}

export interface Comparison {
  readonly questions: ComparedQuestions;
  readonly base: UncertainReadings;
  readonly others: readonly Contrast[];
}

/** Standard errors that a difference must exceed to be called real: 95 % of chance lies within. */
export const REAL = 1.96;
/** Differences below this share of the number itself are rounding. */
const ROUNDING = 1e-9;

/**
 * Several builds side by side, the first bow's own build as the base.
 *
 * Differences carry the errors of both builds jointly: a cause they share (the bow, the chronograph, the law of a drag
 * term) enters once and mostly cancels.
 *
 * @throws NumericalError when an arrow falls short of a range
 */
export function compare(bows: readonly BowAndArrows[], questions: ComparedQuestions): Comparison {
  const [base, ...others] = bows.flatMap(tunedBuilds).map((build) => uncertainReadings(build, questions));
  if (base === undefined) throw new RangeError('a comparison needs a build');
  return { questions, base, others: others.map((readings) => contrast(base, readings)) };
}

function contrast(base: UncertainReadings, readings: UncertainReadings): Contrast {
  return {
    readings,
    facts: recordOf(FACTS, (key) => difference(readings.facts[key], base.facts[key])),
    rows: readings.rows.map((row, i) => {
      const from = base.rows[i];
      return {
        ...recordOf(ROW_VALUES, (key) => difference(row[key], from?.[key] ?? null)),
        withBaseMark: withBaseMark(row, from),
      };
    }),
  };
}

function difference(a: Uncertain | null, b: Uncertain | null): Difference | null {
  if (a === null || b === null) return null;
  const value = a.value - b.value;
  const small = ROUNDING * Math.max(Math.abs(a.value), Math.abs(b.value));
  return judged(
    Math.abs(value) < small ? 0 : value,
    combined([
      [1, a.error],
      [-1, b.error],
    ]),
  );
}

function judged(value: number, error: ErrorForm): Difference {
  const sd = standardError(error);
  return { value, sd, real: Math.abs(value) > REAL * sd, mostly: mainCause(error)?.kind ?? null };
}

type Row = Readonly<Record<RowValue, Uncertain | null>>;

/** The base's pin on this build's paths: its mark less this build's mark, on the target. */
function withBaseMark(row: Row, base: Row | undefined): Difference {
  const perTravel = row.heightPerTravel?.value ?? Number.NaN;
  const pins = difference(base?.pin ?? null, row.pin);
  return {
    value: perTravel * (pins?.value ?? Number.NaN),
    sd: Math.abs(perTravel) * (pins?.sd ?? Number.NaN),
    real: pins?.real ?? false,
    mostly: pins?.mostly ?? null,
  };
}

/** How stiff a cut shaft with its point and nock acts, over the base's; above 1 is stiffer. */
export interface RelativeStiffness {
  /** Square of the ratio of the free arrows' first bending frequencies: stiffness over moving mass. */
  readonly free: number;
  /** Ratio of the loads of the push, turned over: what the string's push meets. */
  readonly pushed: number;
}

/** Which of two builds acts weaker from the same bow, by two measures; neither tells which spine is right. */
export function relativeStiffness({ facts, readings }: Contrast): RelativeStiffness | null {
  const ratio = (fact: Fact): number | null => {
    const [own, difference] = [readings.facts[fact], facts[fact]];
    return own === null || difference === null ? null : own.value / (own.value - difference.value);
  };
  const [bending, load] = [ratio('bendingFrequency'), ratio('pushLoad')];
  return bending === null || load === null ? null : { free: bending ** 2, pushed: 1 / load };
}

/** One build's numbers at many ranges, without their errors: for curves. */
export interface BuildCurve {
  readonly name: string;
  readonly ranges: readonly number[];
  readonly rows: BuildReadings['rows'];
}

/** Every build, the base first, at ranges of its own. */
export const buildCurves = (
  { base, others, questions: { crosswind } }: Comparison,
  ranges: readonly number[],
): readonly BuildCurve[] =>
  [base, ...others.map(({ readings }) => readings)].map(({ build }) => ({
    name: build.name,
    ranges,
    rows: buildReadings(build, build.rig, { ranges, crosswind }).rows,
  }));
