import type { Arrow } from '../../arrow/arrow.ts';
import { calm } from '../../atmosphere/wind.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import type { Launch } from '../../flight/launch.ts';
import { RIGID_STATE, type RigidVector } from '../../flight/rigid-frame.ts';
import { type Disturbance, rigidLaunch } from '../../flight/rigid-launch.ts';
import { type RigidFlyer, rigidFlyer } from '../../flight/rigid-trajectory.ts';
import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { type ArrowEnds, arrowEnds } from '../launch/arrow-ends.ts';
import { endPassing, type Passing } from '../launch/end-passing.ts';

export type Fletching = 'fletched' | 'bare';

/** Where a start sends the arrow: the tear in a sheet of paper, and how a bare shaft hits beside a fletched one. */
export interface StartFlights {
  /** The nock's hole from the point's in paper so far ahead of the grip. */
  readonly tear: (start: Disturbance, paper: Metres, arrow: Fletching) => Passing;
  /** The bare shaft's hit less the fletched arrow's at a range, both at the point. */
  readonly offset: (start: Disturbance, range: Metres) => Passing;
}

export interface FlightsQuestion {
  readonly rig: Rig;
  readonly fletched: Arrow;
  readonly bare: Arrow;
  /** The grip's deepest point ahead of the peep at full draw. */
  readonly gripAhead: Metres;
}

/** Farther aslant the laws of the air no longer hold, rad. */
const LARGEST_INCIDENCE = 0.25;
/** Of a step of the flight: a fit compares flights of nearly the same start, whose differences must not be rounding. */
const TOLERANCE = 1e-9;
/** How often a bare shaft's incidence is looked at, m: some twentieth of the shortest turn. */
const LOOKED_AT = 1;

/**
 * The flights by which a start is told: rigid arrows in still air, followed to where the point strikes.
 *
 * @throws DomainError when the arrow's parts are not known
 */
export function startFlights({ rig, fletched, bare, gripAhead }: FlightsQuestion): StartFlights {
  const still: FlightConditions = { ...rig.conditions, wind: calm };
  const launch = straightLaunch({ ...rig, conditions: still, cant: si(0) });
  const flown = {
    fletched: flownArrow(still, rig.conditions.arrow.dragScale, fletched, false),
    bare: flownArrow(still, rig.conditions.arrow.dragScale, bare, true),
  };
  return {
    tear: (start, paper, kind) => tearOf(flown[kind], launch, start, gripAhead + paper),
    offset: (start, range) => {
      const hit = (kind: Fletching): Passing => {
        const { flyer, ends } = flown[kind];
        const begun = rigidLaunch(launch, start);
        if (kind === 'bare')
          refuseWanderer(begun.position[0], range, (ranges) => flyer.states(begun, ranges));
        return endPassing(flyer, begun, range, ends.ahead);
      };
      const [bareHit, fletchedHit] = [hit('bare'), hit('fletched')];
      return { high: bareHit.high - fletchedHit.high, right: bareHit.right - fletchedHit.right };
    },
  };
}

interface FlownArrow {
  readonly flyer: RigidFlyer;
  readonly ends: ArrowEnds;
}

const flownArrow = (
  conditions: FlightConditions,
  dragScale: number,
  arrow: Arrow,
  mayWander: boolean,
): FlownArrow => ({
  flyer: rigidFlyer(
    { ...conditions, arrow: { ...arrow.flying, dragScale } },
    { mayWander, tolerance: TOLERANCE },
  ),
  ends: arrowEnds(arrow),
});

function tearOf({ flyer, ends }: FlownArrow, launch: Launch, start: Disturbance, range: number): Passing {
  const begins = launch.position[0] + ends.ahead;
  if (!(range > begins)) throw new DomainError('range of the paper (m)', range, `above ${begins.toFixed(2)}`);
  const begun = rigidLaunch(launch, start);
  const point = endPassing(flyer, begun, range, ends.ahead);
  const nock = endPassing(flyer, begun, range, -ends.behind);
  return { high: nock.high - point.high, right: nock.right - point.right };
}

/** @throws DomainError when the shaft flies too far aslant for the laws of the air */
function refuseWanderer(
  from: number,
  to: number,
  fly: (ranges: readonly number[]) => readonly RigidVector[],
): void {
  const ranges = Array.from(
    { length: Math.floor((to - from) / LOOKED_AT) },
    (_, i) => from + (i + 1) * LOOKED_AT,
  );
  const largest = Math.max(0, ...fly(ranges).map(incidence));
  if (largest > LARGEST_INCIDENCE)
    throw new DomainError(
      'angle of the bare shaft to its flight (rad)',
      largest,
      `at most ${LARGEST_INCIDENCE}`,
    );
}

/** Angle of the shaft to its flight, rad. */
function incidence(y: RigidVector): number {
  const [up, right] = [at(y, RIGID_STATE.axisUp), at(y, RIGID_STATE.axisRight)];
  const [vx, vy, vz] = [at(y, RIGID_STATE.vx), at(y, RIGID_STATE.vy), at(y, RIGID_STATE.vz)];
  const forward = Math.sqrt(1 - up * up - right * right);
  return Math.hypot(up / forward - vy / vx, right / forward - vz / vx);
}
