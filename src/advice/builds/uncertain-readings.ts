import type { FlyingArrow } from '../../arrow/flying-arrow.ts';
import { AS_COUNTED, withLift } from '../../arrow/varied-arrow.ts';
import { efficiency } from '../../bow/energy.ts';
import { at } from '../../numerics/at.ts';
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
import { cause, combined, type ErrorForm, scaled } from './error-form.ts';
import { type LaunchLift, launchLift } from './launch-lift.ts';
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
  /** What the launch does to the heights at each range, and last at the zero range; null for an arrow that flies as a point. */
  readonly launch: readonly UncertainLaunch[] | null;
  /** How far a guess of each range may be off; null where no guess leaves the ring. */
  readonly guesses: readonly (GuessRoom | null)[];
}

/** `LaunchLift` with its errors. */
export type UncertainLaunch = Readonly<Record<keyof LaunchLift, Uncertain>>;

/**
 * A number that every flight hangs on, and the step for central differences by it: small against curvature, large against
 * rounding.
 */
interface Knob {
  /** What the number may be off by. */
  readonly error: (build: TunedBuild) => ErrorForm;
  readonly step: number;
  readonly turned: (rig: Rig, by: number) => Rig;
}

const KNOBS: readonly Knob[] = [
  {
    error: ({ errors }) => errors.speed,
    step: 0.1, // m/s
    turned: (rig, by) => ({ ...rig, launchSpeed: si(rig.launchSpeed + by) }),
  },
  {
    error: ({ errors }) => errors.drag,
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
    error: ({ errors }) => errors.peep,
    step: 5e-4, // m
    turned: (rig, by) => ({
      ...rig,
      geometry: { ...rig.geometry, peepHeight: si(rig.geometry.peepHeight + by) },
    }),
  },
];

const MASS: Knob = {
  error: ({ errors }) => errors.mass,
  step: 1e-4, // kg
  turned: (rig, by) => {
    const { arrow } = rig.conditions;
    return { ...rig, conditions: { ...rig.conditions, arrow: { ...arrow, mass: si(arrow.mass + by) } } };
  },
};

/** Of the factors on what fins lift and on what the wake of blades takes. */
const LIFT_STEP = 0.02;

/**
 * The laws of lift, alike for all arrows: what vanes lift in the shaft's layer, what blades lift, and what their wake takes of
 * the vanes. Only those the arrow has.
 */
function liftKnobs({ attitude }: FlyingArrow): readonly Knob[] {
  const fins = attitude === null ? undefined : attitude.fins;
  if (fins === undefined) return [];
  const names = (['vanes', 'blades', 'wake'] as const).filter((name) => fins[name] !== null);
  return names.map((name) => ({
    error: () => cause(`lift:${name}`, fins.uncertainty[name]),
    step: LIFT_STEP,
    turned: (rig, by) => ({
      ...rig,
      conditions: {
        ...rig.conditions,
        arrow: withLift(rig.conditions.arrow, { ...AS_COUNTED, [name]: 1 + by }),
      },
    }),
  }));
}

interface Evaluated {
  readonly readings: BuildReadings;
  readonly launch: readonly LaunchLift[] | null;
}

/**
 * Everything asked of a build, with errors from its launch speed, its drag, the peep height, a mass that nobody weighed and the
 * laws of lift by central differences. What the parts list tells besides (balance, sizes) is taken as written.
 *
 * @throws NumericalError when the arrow falls short of a range
 */
export function uncertainReadings(build: TunedBuild, questions: ComparedQuestions): UncertainReadings {
  const { rig } = build;
  const evaluated = (turned: Rig): Evaluated => ({
    readings: buildReadings(build, turned, questions),
    launch: launchLift(turned, [...questions.ranges, rig.zeroRange]),
  });
  const centre = evaluated(rig);
  const weighed = build.errors.mass.size === 0;
  const beside = [...KNOBS, ...(weighed ? [] : [MASS]), ...liftKnobs(rig.conditions.arrow)].map(
    ({ error, step, turned }) => ({
      error: error(build),
      step,
      above: evaluated(turned(rig, step)),
      below: evaluated(turned(rig, -step)),
    }),
  );
  const numbered = (value: number, of: (at: Evaluated) => number | null): Uncertain => ({
    value,
    error: combined(
      beside.map(({ error, step, above, below }) => {
        const [high, low] = [of(above), of(below)];
        return [high === null || low === null ? 0 : (high - low) / (2 * step), error];
      }),
    ),
  });
  const uncertain = (of: (readings: BuildReadings) => number | null): Uncertain | null => {
    const value = of(centre.readings);
    return value === null ? null : numbered(value, ({ readings }) => of(readings));
  };
  const lifted = (value: number, i: number, key: keyof LaunchLift): Uncertain =>
    numbered(value, ({ launch }) => (launch === null ? null : at(launch, i)[key]));
  return {
    build,
    facts: {
      ...recordOf(FACTS, (key) => uncertain(({ facts }) => facts[key])),
      efficiency: efficiencyOf(build),
    },
    rows: questions.ranges.map((_, i) =>
      recordOf(ROW_VALUES, (key) => uncertain(({ rows }) => rows[i]?.[key] ?? null)),
    ),
    launch:
      centre.launch === null
        ? null
        : centre.launch.map(({ swing, perNockTravel }, i) => ({
            swing: lifted(swing, i, 'swing'),
            perNockTravel: lifted(perNockTravel, i, 'perNockTravel'),
          })),
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
