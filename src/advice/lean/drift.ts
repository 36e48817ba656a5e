import { unspun } from '../../arrow/lift/unspun.ts';
import { STATE } from '../../flight/frame.ts';
import { flyer } from '../../flight/trajectory.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { launchThrough } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';
import { type Sighted, sightIn } from '../../sight/sighted.ts';

/** What moves this arrow sideways at one range with the bow upright, each cause on its own; right positive. */
export interface Drift {
  readonly range: Metres;
  /** Of a spinning arrow that follows its falling path; left for a right helical. */
  readonly gyroscopic: Metres;
  /** Side force of the spinning shaft at its ceiling (ideal circulation), without the gyroscopic part. */
  readonly shaftForceCeiling: Metres;
  /** Null when the place on the Earth is not known. */
  readonly coriolis: Metres | null;
}

/**
 * Sideways drift by range and cause, read on the launch that hits each range (m) in height.
 *
 * Each part is the difference between two flights from the same launch that differ in that cause alone. They add up: the
 * products of two of them are below 1e-4 of either.
 *
 * @checked reference/rigid-body-figures, reference/sideways-figures
 */
export function drift(rig: Rig, ranges: readonly number[]): readonly Drift[] {
  const sighted = sightIn(rig, ranges);
  const { conditions } = rig;
  const lateralWith = (change: Partial<Rig['conditions']>): readonly number[] =>
    lateralOf(sighted, { ...rig, conditions: { ...conditions, ...change } }, ranges);

  const { arrow } = conditions;
  const [still, plain, ceiling] = [
    lateralWith({ arrow: unspun(arrow) }),
    lateralWith({ arrow: { ...arrow, sideForce: 0 } }),
    lateralWith({ arrow: { ...arrow, sideForce: 1 } }),
  ];
  const coriolis =
    conditions.place === null ? null : { here: lateralWith({}), without: lateralWith({ place: null }) };
  return ranges.map((range, i) => {
    const between = (a: readonly number[], b: readonly number[]): Metres =>
      si((a[i] ?? Number.NaN) - (b[i] ?? Number.NaN));
    return {
      range: si(range),
      gyroscopic: between(plain, still),
      shaftForceCeiling: between(ceiling, plain),
      coriolis: coriolis === null ? null : between(coriolis.here, coriolis.without),
    };
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
