import { flyer } from '../../flight/trajectory.ts';
import { type Metres, type MetresPerSecond, si } from '../../quantities/quantity.ts';
import { marksFor } from '../../sight/marks.ts';
import type { Rig } from '../../sight/rig.ts';
import { impact } from '../../sight/zero.ts';

/** How far high an arrow hits at a range with the marks of another speed. */
export interface MarkHeight {
  readonly range: Metres;
  readonly height: Metres;
}

/**
 * Where an arrow hits with the marks of the rig when it leaves by so much faster.
 *
 * @throws NumericalError when it does not get to a range
 */
export function heightsAtSpeed(
  rig: Rig,
  faster: MetresPerSecond,
  ranges: readonly Metres[],
): readonly MarkHeight[] {
  const { marks, zero } = marksFor(rig, ranges);
  const other: Rig = { ...rig, launchSpeed: si(rig.launchSpeed + faster) };
  const flight = flyer(rig.conditions);
  return marks.map(({ range, travel }) => {
    const pin = { down: zero.down + travel, windage: zero.windage };
    return { range, height: si(impact(flight, other, pin, range).height) };
  });
}
