import type { FlyingArrow } from '../../arrow/flying-arrow.ts';
import { unspun } from '../../arrow/lift/unspun.ts';
import { type Flyer, flyer } from '../../flight/trajectory.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { PinPosition } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';
import { sightIn } from '../../sight/sighted.ts';
import { impact } from '../../sight/zero.ts';
import { type DaySetting, onDay } from '../day-setting.ts';

/** How a group was shot, as far as left and right are concerned. */
export interface LateralShot {
  readonly range: Metres;
  /** Helical of the arrows shot: 1 right, −1 left, null as the rig's own. */
  readonly turn: 1 | -1 | null;
  /** How far the bow was turned on purpose against its own level, clockwise positive; half a turn is end for end. */
  readonly cant: Radians;
  /** What was different on the day; absent where the rig itself was shot. */
  readonly setting?: DaySetting;
}

/**
 * Causes of a sideways miss that marks can tell about, in this order wherever a list of numbers stands for them: `windage`
 * straight from the eye, m per m (a pin moved left); `offset` of the arrow from under the eye at the bow, m; `plumb` what
 * the bow's lean is beyond what its level says, rad, clockwise positive; `side_force` of the spinning shaft beyond the
 * rig's own, as a share of its ceiling.
 */
export const LATERAL_CAUSES = ['windage', 'offset', 'plumb', 'side_force'] as const;
export type LateralCause = (typeof LATERAL_CAUSES)[number];

/** Where the rig puts one group, and how that moves with each cause. */
export interface LateralPrediction {
  /** m, right positive, with windage as set at the zero range, no offset, a true level and the rig's own side force. */
  readonly lateral: number;
  /** The part of it that the arrow's spin makes, with the windage left alone. */
  readonly spin: number;
  /** d(lateral)/d(cause), in the order of LATERAL_CAUSES. */
  readonly slopes: readonly number[];
  /** d(lateral)/d(wind from the left, m/s), the windage left alone: by which way a wind nobody wrote down moves the group. */
  readonly perCrosswind: number;
}

/**
 * Step of the central difference in the wind, m/s: a common one. An arrow of known parts enters a strong wind a little less or
 * more far for every m/s of it, by up to a tenth of the drift; one that flies as a point drifts straight in it to 1e-4.
 */
const WIND_STEP = 1;
/** Steps of the central differences, rad: lateral is straight in both angles to 1e-6 of itself over them. */
const STEP = 1e-3;

/**
 * Sideways position of every shot by the full flight model, each aimed with the upright bow's mark for its range, and its
 * derivatives. Known things (the rig's wind, cant, lean, spin, place) are in `lateral`.
 */
export function predictLateral(rig: Rig, shots: readonly LateralShot[]): readonly LateralPrediction[] {
  if (shots.length === 0) return [];
  const { pins } = sightIn(
    rig,
    shots.map(({ range }) => range),
  );
  const flights = new Map<Rig, Map<string, Flyer>>();
  const flightOf = (day: Rig, arrow: FlyingArrow, more: number): Flyer => {
    const key = `${arrow.attitude?.spinPerMetre} ${arrow.sideForce} ${more}`;
    const { wind } = day.conditions;
    const blown = { ...wind, across: si<'m/s'>(wind.across + more) };
    const ofDay = flights.get(day) ?? new Map<string, Flyer>();
    const found = ofDay.get(key) ?? flyer({ ...day.conditions, arrow, wind: blown });
    flights.set(day, ofDay.set(key, found));
    return found;
  };
  const days = new Map<DaySetting, Rig>();
  const rigOn = (setting: DaySetting | undefined): Rig => {
    if (setting === undefined) return rig;
    // What warmth does to the speed is nothing to left and right.
    const found = days.get(setting) ?? onDay(rig, setting, 0);
    days.set(setting, found);
    return found;
  };
  return shots.map((shot, i) => {
    const pin = pins[i];
    if (pin === undefined) throw new RangeError(`no pin for shot ${i}`);
    const day = rigOn(shot.setting);
    const own = day.conditions.arrow.sideForce;
    const shotArrow = turnedArrow(day.conditions.arrow, shot.turn);
    const at = ({ windage = 0, tilt = 0, sideForce = own, arrow = shotArrow, across = 0 }): number => {
      const flight = flightOf(day, { ...arrow, sideForce }, across);
      const held = { ...day, cant: si<'rad'>(day.cant + shot.cant + tilt) };
      const moved: PinPosition = { ...pin, windage: pin.windage - windage * rig.geometry.peepToPin };
      return impact(flight, held, moved, shot.range).lateral;
    };
    const lateral = at({});
    return {
      lateral,
      spin: lateral - at({ arrow: unspun(shotArrow) }),
      slopes: [
        (at({ windage: STEP }) - at({ windage: -STEP })) / (2 * STEP),
        Math.cos(day.cant + shot.cant),
        (at({ tilt: STEP }) - at({ tilt: -STEP })) / (2 * STEP),
        at({ sideForce: 1 }) - at({ sideForce: 0 }),
      ],
      perCrosswind: (at({ across: WIND_STEP }) - at({ across: -WIND_STEP })) / (2 * WIND_STEP),
    };
  });
}

/** The same arrow with its vanes turned right or left. */
function turnedArrow(arrow: FlyingArrow, turn: 1 | -1 | null): FlyingArrow {
  if (arrow.attitude === null || turn === null) return arrow;
  const spinPerMetre = si<'rad/m'>(turn * Math.abs(arrow.attitude.spinPerMetre));
  return { ...arrow, attitude: { ...arrow.attitude, spinPerMetre } };
}
