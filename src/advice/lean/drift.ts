import { unspun } from '../../arrow/lift/unspun.ts';
import { STATE } from '../../flight/frame.ts';
import { rigidLaunch } from '../../flight/rigid-launch.ts';
import { type RigidFlyer, rigidFlyer } from '../../flight/rigid-trajectory.ts';
import { flyer } from '../../flight/trajectory.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { launchThrough } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';
import { type Sighted, sightIn } from '../../sight/sighted.ts';

/** What moves this arrow sideways at one range with the bow upright, each cause on its own; right positive. */
export interface Drift {
  readonly range: Metres;
  /** Of a spinning arrow that follows its falling path; left for a right helical. */
  readonly gyroscopic: Metres;
  /**
   * Side force of the spinning shaft at its ceiling (ideal circulation), without the gyroscopic part, out of a clean launch:
   * the first swing of an arrow that leaves without turning with its path adds a tenth to it far out and several times its
   * settled part close by.
   */
  readonly shaftForceCeiling: Metres;
  /** Null when the place on the Earth is not known. */
  readonly coriolis: Metres | null;
}

/**
 * Sideways drift by range and cause, read on the launch that hits each range (m) in height.
 *
 * Each part is the difference between two flights from the same launch that differ in that cause alone, the ceiling between two
 * of the rigid model. They add up: the products of two of them are below 1e-4 of either.
 *
 * @checked reference/rigid-body-figures, reference/sideways-figures
 */
export function drift(rig: Rig, ranges: readonly number[]): readonly Drift[] {
  const sighted = sightIn(rig, ranges);
  const { conditions } = rig;
  const lateralWith = (change: Partial<Rig['conditions']>): readonly number[] =>
    lateralOf(sighted, { ...rig, conditions: { ...conditions, ...change } }, ranges);

  const { arrow } = conditions;
  const plainArrow = { ...arrow, sideForce: 0 };
  const [still, plain] = [lateralWith({ arrow: unspun(arrow) }), lateralWith({ arrow: plainArrow })];
  const ceiling = ceilingOf(sighted, ranges);
  const coriolis =
    conditions.place === null ? null : { here: lateralWith({}), without: lateralWith({ place: null }) };
  return ranges.map((range, i) => {
    const between = (a: readonly number[], b: readonly number[]): Metres =>
      si((a[i] ?? Number.NaN) - (b[i] ?? Number.NaN));
    return {
      range: si(range),
      gyroscopic: between(plain, still),
      shaftForceCeiling: si(at(ceiling, i)),
      coriolis: coriolis === null ? null : between(coriolis.here, coriolis.without),
    };
  });
}

/** What the shaft's side force at its ceiling moves the arrow by at each range (m); 0 for one that flies as a point. */
function ceilingOf({ rig, pins }: Sighted, ranges: readonly number[]): readonly number[] {
  const { conditions } = rig;
  const { arrow } = conditions;
  if (arrow.attitude === null || !(arrow.attitude.firstMoment < 0)) return ranges.map(() => 0);
  const flying = (sideForce: number): RigidFlyer =>
    rigidFlyer({ ...conditions, arrow: { ...arrow, sideForce } });
  const [without, ideal] = [flying(0), flying(1)];
  return ranges.map((range, i) => {
    const launch = rigidLaunch(launchThrough(rig.geometry, at(pins, i), rig.cant, rig.launchSpeed));
    const lateral = ({ states }: RigidFlyer): number => at(states(launch, [range]), 0)[STATE.lateral];
    return lateral(ideal) - lateral(without);
  });
}

/** Lateral position at each range, flown by `rig` from the launches of a bow that is already sighted in. */
function lateralOf({ pins }: Sighted, rig: Rig, ranges: readonly number[]): readonly number[] {
  const flight = flyer(rig.conditions);
  return ranges.map((range, i) => {
    const pin = pins[i];
    if (pin === undefined) throw new RangeError(`no pin for range ${i}`);
    const [state] = flight.states(launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed), [range]);
    return state?.[STATE.lateral] ?? Number.NaN;
  });
}
