import { at } from '../../numerics/at.ts';
import { NOCK_TRAVEL } from '../launch/nock-travel.ts';
import type { RowValue } from './build-readings.ts';
import { cause, combined, scaled } from './error-form.ts';
import type { Uncertain, UncertainLaunch, UncertainReadings } from './uncertain-readings.ts';

/**
 * The readings of a candidate from the bow of a base, with what the launch does to its heights beyond what it does to the
 * base's: the marks of the base hold its own launch already. Out of one bow the nock travels alike with both, up or down by
 * what nobody has measured.
 *
 *   shift = swing − swing of the base + v (per nock travel − the same of the base),   v = 0 ± `NOCK_TRAVEL`
 *
 * Heights rise by it, drops shrink, and pins move by what takes it back, the zero's pin with them.
 *
 * @param identity of the bow
 */
export function launchedFrom(
  base: UncertainReadings,
  readings: UncertainReadings,
  identity: string,
): UncertainReadings {
  const { launch, rows, build } = readings;
  if (launch === null || base.launch === null) return readings;
  const baseLaunch = base.launch;
  const shifts = launch.map((own, i) => shiftOf(own, at(baseLaunch, i), identity));
  const perTravel = (i: number): number => knownValue(at(rows, i).heightPerTravel);
  const { scale, zeroRange, geometry } = build.rig;
  // At the zero range a metre of travel turns the bow by one over the distance to the pin.
  const zeroShift = times(-geometry.peepToPin / zeroRange, at(shifts, rows.length));
  return {
    ...readings,
    rows: rows.map((row, i) => {
      const shift = at(shifts, i);
      const pin = times(-1 / perTravel(i), shift);
      const travel = plus(pin, -1, zeroShift);
      const changes: Partial<Record<RowValue, Uncertain>> = {
        height: shift,
        drop: times(-1, shift),
        pin,
        travel,
        ...(scale === null ? {} : { reading: times(scale.direction / scale.travelPerUnit, travel) }),
      };
      const changed = { ...row };
      for (const key of ['height', 'drop', 'pin', 'travel', 'reading'] as const) {
        const [value, change] = [row[key], changes[key]];
        if (value !== null && change !== undefined) changed[key] = plus(value, 1, change);
      }
      return changed;
    }),
  };
}

/** How much higher a candidate hits than its base does by what the launch does to both. */
export function shiftOf(own: UncertainLaunch, base: UncertainLaunch, identity: string): Uncertain {
  const swing = plus(own.swing, -1, base.swing);
  const perTravel = own.perNockTravel.value - base.perNockTravel.value;
  return {
    value: swing.value,
    error: combined([
      [1, swing.error],
      [perTravel, cause(`nock travel:${identity}`, NOCK_TRAVEL)],
    ]),
  };
}

export const times = (factor: number, { value, error }: Uncertain): Uncertain => ({
  value: factor * value,
  error: scaled(factor, error),
});

export const plus = (a: Uncertain, factor: number, b: Uncertain): Uncertain => ({
  value: a.value + factor * b.value,
  error: combined([
    [1, a.error],
    [factor, b.error],
  ]),
});

function knownValue(number: Uncertain | null): number {
  if (number === null) throw new RangeError('a build that flies has a height for every travel');
  return number.value;
}
