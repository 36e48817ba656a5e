import type { Arrow } from '../../arrow/arrow.ts';
import type { FlyingArrow } from '../../arrow/flying-arrow.ts';
import type { Asymmetry } from '../../arrow/lift/asymmetry.ts';
import { asymmetryOf } from '../../arrow/lift/build-faults.ts';
import { withBalance, withMass } from '../../arrow/varied-arrow.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import { STATE } from '../../flight/frame.ts';
import type { Launch } from '../../flight/launch.ts';
import type { RigidVector } from '../../flight/rigid-frame.ts';
import { CLEAN, rigidLaunch } from '../../flight/rigid-launch.ts';
import { rigidFlyer } from '../../flight/rigid-trajectory.ts';
import { uniformCubic } from '../../numerics/interpolate.ts';
import { scale } from '../../numerics/vector.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Kilograms, type Metres, si } from '../../quantities/quantity.ts';
import { type Cause, type Difference, differenceOf, type Variation } from './scatter-causes.ts';

/** One arrow, shot many times with differences. Plain data, so that threads can be handed it: the drag curve is a table. */
export interface ScatterQuestion {
  readonly arrow: Pick<Arrow, 'parts' | 'surfaces' | 'pieces'>;
  readonly flying: Omit<FlyingArrow, 'drag'>;
  /** Drag coefficients at Reynolds numbers 0, `DRAG_STEP`, 2 `DRAG_STEP`, ... */
  readonly drag: readonly number[];
  readonly surroundings: Omit<FlightConditions, 'arrow'>;
  /** Of the nominal arrow. */
  readonly launch: Launch;
  /** Of the bow: how much a heavier arrow is slower. */
  readonly virtualMass: Kilograms;
  readonly variation: Variation;
  readonly seed: number;
  /** Rising. */
  readonly ranges: readonly Metres[];
}

/** The drag table of a question; on this grid a cubic is within 1e-4 of a build-up. */
export const DRAG_STEP = 1000;
const DRAG_POINTS = 129;

/** An arrow and its flight as a question. @throws DomainError when the arrow's parts are not known */
export function scatterQuestion(
  arrow: Arrow,
  conditions: FlightConditions,
  rest: Omit<ScatterQuestion, 'arrow' | 'flying' | 'drag' | 'surroundings'>,
): ScatterQuestion {
  const { parts, surfaces, pieces } = arrow;
  if (parts === null || surfaces === null)
    throw new DomainError('scatter', Number.NaN, 'an arrow with `arrow.parts` in the setup file');
  const { arrow: flown, ...surroundings } = conditions;
  const { drag, ...flying } = flown;
  return {
    ...rest,
    arrow: { parts, surfaces, pieces },
    flying,
    // A curve that grows without limit towards rest is cut there: no arrow flies that slowly.
    drag: Array.from({ length: DRAG_POINTS }, (_, i) => drag.at(Math.max(i, 0.5) * DRAG_STEP)),
    surroundings,
  };
}

/** Errors of 0.1 mm at 100 yd and 3 mm for the wildest arrow, against groups of inches. */
const TOLERANCE = 1e-5;

/** A stretch of arrows, as plain data that another thread can be sent. */
export interface ScatterJob {
  readonly question: ScatterQuestion;
  /** The one cause that is let vary; null for all. */
  readonly only: Cause | null;
  readonly from: number;
  readonly to: number;
}

/**
 * Hits of the arrows numbered `from` to before `to`: for each arrow and range in turn its height and its lateral position, m.
 *
 * The result for an arrow depends on its number alone, so any division of the numbers among threads gives the same hits.
 */
export function scatterHits({ question, only, from, to }: ScatterJob): Float64Array {
  const { ranges, variation, seed } = question;
  const nominal = { ...question.flying, drag: { at: uniformCubic(0, DRAG_STEP, question.drag) } };
  const hits = new Float64Array(2 * ranges.length * (to - from));
  let next = 0;
  for (let index = from; index < to; index++)
    for (const state of shot(nominal, question, differenceOf(variation, only, seed, index))) {
      hits[next++] = state[STATE.height];
      hits[next++] = state[STATE.lateral];
    }
  return hits;
}

function shot(
  nominal: FlyingArrow,
  question: ScatterQuestion,
  difference: Difference,
): readonly RigidVector[] {
  const { surroundings, launch, virtualMass, ranges, arrow } = question;
  const mass = nominal.mass + difference.mass;
  const flying = withBalance(withMass(nominal, si(mass)), si(nominal.balance + difference.balance));
  const asymmetry = asymmetryOf({ ...arrow, flying }, difference.faults);
  const alike = isTrue(asymmetry);
  // One bow gives arrow and virtual mass together the same energy.
  const nominalSpeed = Math.sqrt(launch.velocity.reduce((sum, v) => sum + v * v, 0));
  const faster =
    Math.sqrt((nominal.mass + virtualMass) / (mass + virtualMass)) + difference.speed / nominalSpeed;
  const started = { ...launch, velocity: scale(launch.velocity, faster) };
  const disturbed = rigidLaunch(started, {
    ...CLEAN,
    tailRisingRate: si(difference.tailUpRate),
    tailLeftRate: si(difference.tailLeftRate),
  });
  const flight = rigidFlyer(
    { ...surroundings, arrow: flying },
    { tolerance: TOLERANCE, asymmetry: alike ? null : asymmetry },
  );
  return flight.states(disturbed, ranges);
}

const isTrue = ({ force, firstMoment, spinPerMetre }: Asymmetry): boolean =>
  [...force, ...firstMoment, spinPerMetre].every((value) => value === 0);
