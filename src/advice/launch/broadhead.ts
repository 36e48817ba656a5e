import type { FlyingArrow } from '../../arrow/flying-arrow.ts';
import { staysUpright } from '../../arrow/lift/stays-upright.ts';
import { AS_COUNTED, withLift } from '../../arrow/varied-arrow.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import type { Launch } from '../../flight/launch.ts';
import type { RigidState } from '../../flight/rigid-frame.ts';
import { type Disturbance, rigidLaunch } from '../../flight/rigid-launch.ts';
import { flyRigid } from '../../flight/rigid-trajectory.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { type BadStart, badStarts, type StartName } from './bad-starts.ts';
import { NOCK_TRAVEL } from './nock-travel.ts';

/** One arrow as it leaves the bow. */
export interface Shot {
  readonly conditions: FlightConditions;
  readonly launch: Launch;
}

/** Where the broadhead hits, from where the field point hits out of the same start. */
interface BroadheadMiss {
  readonly range: Metres;
  readonly right: Metres;
  readonly high: Metres;
}

export interface BroadheadStart {
  readonly name: StartName;
  readonly misses: readonly BroadheadMiss[];
}

/**
 * Broadhead against field point from one bow held alike, by range, for a clean start and for bad ones.
 *
 * Clean, the two differ by drag and by what the shorter margin makes of the fall; out of a bad start the blades steer the front
 * while the vanes have not yet brought the tail in line.
 *
 * @param ranges rising, beyond the launch
 */
export function broadheadMisses(
  field: Shot,
  broadhead: Shot,
  start: BadStart,
  ranges: readonly Metres[],
): readonly BroadheadStart[] {
  return badStarts(start).map(([name, disturbance]) => {
    const misses = apart(
      flown(field, disturbance, null, ranges),
      flown(broadhead, disturbance, null, ranges),
    );
    return { name, misses: ranges.map((range, i) => ({ range, ...at(misses, i) })) };
  });
}

/** A shot with what the shape of its head leaves open of its drag. */
export interface ShapedShot extends Shot {
  /** Relative standard uncertainty of the drag from the head's shape alone. */
  readonly shapeDragSd: number;
}

/** How two blades stand as the arrow leaves the string, seen from behind. */
const STANDS = [
  { stand: 'upright', roll: 0 },
  { stand: 'flat', roll: Math.PI / 2 },
  { stand: 'leaning right', roll: Math.PI / 4 },
  { stand: 'leaning left', roll: -Math.PI / 4 },
] as const;
type Stand = (typeof STANDS)[number]['stand'];

/** A miss with its standard errors: of the laws of lift, the wake, the heads' own drag, and the nock's travel of a tuned bow. */
export interface BroadheadAnswerMiss extends BroadheadMiss {
  readonly rightSd: Metres;
  readonly highSd: Metres;
  /** Of two blades, by how they stand at the launch; empty for more, which are alike all round. */
  readonly stands: readonly { readonly stand: Stand; readonly right: Metres; readonly high: Metres }[];
}

export interface BroadheadAnswer {
  readonly name: StartName;
  readonly misses: readonly BroadheadAnswerMiss[];
}

/**
 * `broadheadMisses` with errors, each cause changed by one standard uncertainty at a time, and with two blades also as they may
 * stand. None of it has been measured on arrows.
 *
 * @param ranges rising, beyond the launch
 */
export function broadheadAnswers(
  field: ShapedShot,
  broadhead: ShapedShot,
  start: BadStart,
  ranges: readonly Metres[],
): readonly BroadheadAnswer[] {
  const two = bladesOf(broadhead) === 2;
  return badStarts(start).map(([name, disturbance]) => {
    const missesOf = (a: Shot, b: Shot, off: Disturbance, roll: number | null = null) =>
      apart(flown(a, off, null, ranges), flown(b, off, roll, ranges));
    const centre = missesOf(field, broadhead, disturbance);
    const varied = [
      ...(['vanes', 'blades', 'wake'] as const).map((fin) =>
        missesOf(liftedOtherwise(field, fin), liftedOtherwise(broadhead, fin), disturbance),
      ),
      missesOf(draggedOtherwise(field), broadhead, disturbance),
      missesOf(field, draggedOtherwise(broadhead), disturbance),
      ...nockTravels(broadhead, disturbance).map((off) => missesOf(field, broadhead, off)),
    ];
    const standing = two
      ? STANDS.map(({ stand, roll }) => ({ stand, own: missesOf(field, broadhead, disturbance, roll) }))
      : [];
    const sd = (i: number, axis: 'right' | 'high'): Metres =>
      si(Math.hypot(...varied.map((misses) => at(misses, i)[axis] - at(centre, i)[axis])));
    return {
      name,
      misses: ranges.map((range, i) => ({
        range,
        ...at(centre, i),
        rightSd: sd(i, 'right'),
        highSd: sd(i, 'high'),
        stands: standing.map(({ stand, own }) => ({ stand, ...at(own, i) })),
      })),
    };
  });
}

interface Apart {
  readonly right: Metres;
  readonly high: Metres;
}

const flown = (
  { conditions, launch }: Shot,
  disturbance: Disturbance,
  roll: number | null,
  ranges: readonly Metres[],
): readonly RigidState[] =>
  flyRigid(conditions, rigidLaunch(launch, disturbance, si(roll === null ? 0 : roll)), ranges, {
    bladesStand: roll !== null,
  });

const apart = (a: readonly RigidState[], b: readonly RigidState[]): readonly Apart[] =>
  b.map(({ lateral, height }, i) => ({
    right: si(lateral - at(a, i).lateral),
    high: si(height - at(a, i).height),
  }));

const withArrow = <S extends Shot>(shot: S, arrow: FlyingArrow): S => ({
  ...shot,
  conditions: { ...shot.conditions, arrow },
});

/** With fins that lift more than counted by one standard uncertainty, or less where more would make the arrow tumble. */
function liftedOtherwise(shot: ShapedShot, fin: 'vanes' | 'blades' | 'wake'): ShapedShot {
  const { arrow } = shot.conditions;
  const fins = arrow.attitude === null ? undefined : arrow.attitude.fins;
  if (fins === undefined) return shot;
  const by = (share: number): FlyingArrow => withLift(arrow, { ...AS_COUNTED, [fin]: 1 + share });
  const more = by(fins.uncertainty[fin]);
  return withArrow(shot, staysUpright(more) ? more : by(-fins.uncertainty[fin]));
}

const draggedOtherwise = (shot: ShapedShot): ShapedShot => {
  const { arrow } = shot.conditions;
  return withArrow(shot, { ...arrow, dragScale: arrow.dragScale * (1 + shot.shapeDragSd) });
};

/** The same start with the nock travelling up, and with it travelling left, as it may in a tuned bow. */
function nockTravels({ conditions }: Shot, start: Disturbance): readonly Disturbance[] {
  const rate = NOCK_TRAVEL / conditions.arrow.balance;
  return [
    { ...start, tailRisingRate: si(start.tailRisingRate + rate) },
    { ...start, tailLeftRate: si(start.tailLeftRate + rate) },
  ];
}

function bladesOf({ conditions }: Shot): number {
  const { attitude } = conditions.arrow;
  const blades = attitude === null || attitude.fins === undefined ? null : attitude.fins.blades;
  return blades === null ? 0 : blades.count;
}
