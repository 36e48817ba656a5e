import { efficiency } from '../../bow/energy.ts';
import { NumericalError } from '../../numerics/numerical-error.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { type GuessRoom, guessRoom } from '../range/misjudge.ts';
import {
  type BuildReadings,
  buildReadings,
  FACTS,
  type Fact,
  type Questions,
  ROW_VALUES,
  type RowValue,
} from './build-readings.ts';
import { combined, type ErrorForm, scaled } from './error-form.ts';
import { recordOf } from './record-of.ts';
import type { TunedBuild } from './tuned-build.ts';

/** A number and its error over the causes it shares with other builds. */
export interface Uncertain {
  readonly value: number;
  readonly error: ErrorForm;
}

/** What a comparison asks besides. */
export interface ComparedQuestions extends Questions {
  /** Diameter of what is to be hit, m. */
  readonly ring: number;
}

export interface UncertainReadings {
  readonly build: TunedBuild;
  readonly facts: Readonly<Record<Fact, Uncertain | null>>;
  readonly rows: readonly Readonly<Record<RowValue, Uncertain | null>>[];
  /** How far a guess of each range may be off; null where no guess leaves the ring. */
  readonly guesses: readonly (GuessRoom | null)[];
}

/**
 * A number that every flight hangs on, and the step for central differences by it: small against curvature, large against
 * rounding.
 */
interface Knob {
  readonly error: 'speed' | 'drag' | 'peep';
  readonly step: number;
  readonly turned: (rig: Rig, by: number) => Rig;
}

const KNOBS: readonly Knob[] = [
  {
    error: 'speed',
    step: 0.1, // m/s
    turned: (rig, by) => ({ ...rig, launchSpeed: si(rig.launchSpeed + by) }),
  },
  {
    error: 'drag',
    step: 0.02, // of the factor on the drag
    turned: (rig, by) => {
      const { arrow } = rig.conditions;
      return {
        ...rig,
        conditions: { ...rig.conditions, arrow: { ...arrow, dragScale: arrow.dragScale + by } },
      };
    },
  },
  {
    error: 'peep',
    step: 5e-4, // m
    turned: (rig, by) => ({
      ...rig,
      geometry: { ...rig.geometry, peepHeight: si(rig.geometry.peepHeight + by) },
    }),
  },
];

/**
 * Everything asked of a build, with errors from its launch speed, drag and peep height by central differences. What the
 * parts list tells (mass, balance, margin, spin) is taken as written.
 *
 * @throws NumericalError when the arrow falls short of a range
 */
export function uncertainReadings(build: TunedBuild, questions: ComparedQuestions): UncertainReadings {
  const at = (rig: Rig): BuildReadings => buildReadings(build, rig, questions);
  const centre = at(build.rig);
  const beside = KNOBS.map(({ error, step, turned }) => ({
    error: build.errors[error],
    step,
    above: at(turned(build.rig, step)),
    below: at(turned(build.rig, -step)),
  }));
  const uncertain = (of: (readings: BuildReadings) => number | null): Uncertain | null => {
    const value = of(centre);
    if (value === null) return null;
    return {
      value,
      error: combined(
        beside.map(({ error, step, above, below }) => [
          ((of(above) ?? value) - (of(below) ?? value)) / (2 * step),
          error,
        ]),
      ),
    };
  };
  return {
    build,
    facts: {
      ...recordOf(FACTS, (key) => uncertain(({ facts }) => facts[key])),
      efficiency: efficiencyOf(build),
    },
    rows: questions.ranges.map((_, i) =>
      recordOf(ROW_VALUES, (key) => uncertain(({ rows }) => rows[i]?.[key] ?? null)),
    ),
    guesses: questions.ranges.map((range) => guessAt(build.rig, questions.ring, range)),
  };
}

/** m/(m + K) turns on the virtual mass alone. */
function efficiencyOf({ errors, energy, rig }: TunedBuild): Uncertain {
  const share = efficiency(energy, rig.conditions.arrow.mass).value;
  return { value: share, error: scaled(share * (share - 1), errors.virtualMass) };
}

/** So close that every guess hits, or so slow that none does, there is no room to tell. */
function guessAt(rig: Rig, ring: number, range: number): GuessRoom | null {
  try {
    return guessRoom(rig, ring, [range])[0] ?? null;
  } catch (error) {
    if (error instanceof NumericalError || error instanceof DomainError) return null;
    throw error;
  }
}
