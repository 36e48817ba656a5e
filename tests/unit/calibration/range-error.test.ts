import { describe, expect, it } from 'vitest';
import { slopeAtHit } from '../../../src/calibration/range-error.ts';
import { flyer } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { impact, pinForHit } from '../../../src/sight/zero.ts';
import { dragless, inventedRig, yards } from '../sight/invented-rig.ts';

/** Height gained per metre beyond the range, of the flight that is sighted in there. */
function flownSlope(rig: typeof inventedRig, range: number): number {
  const flight = flyer(rig.conditions);
  const pin = pinForHit(rig, range, 0, flight);
  const at = (x: number) => impact(flyer(rig.conditions), rig, pin, x).height;
  return (at(range + 0.1) - at(range - 0.1)) / 0.2;
}

it.each([15, 40, 60, 100])('at %i yd is the flown path to 3 % of its fall', (range) => {
  const x = yards(range);
  const fall = (9.80665 * x) / 85.344 ** 2; // rad: what the path turns by without drag
  expect(Math.abs(slopeAtHit(inventedRig, x) - flownSlope(inventedRig, x))).toBeLessThan(0.03 * fall);
});

it('counts the fall from where free flight begins: from 20 m on, at 80 yd, to 3 % of it', () => {
  // Without drag a start later or earlier by as much would give the same slope.
  const late = { ...inventedRig, geometry: { ...inventedRig.geometry, freeFlight: si<'m'>(20) } };
  const fall = (9.80665 * (yards(80) - 20)) / 85.344 ** 2;
  expect(Math.abs(slopeAtHit(late, yards(80)) - flownSlope(late, yards(80)))).toBeLessThan(0.03 * fall);
});

it('without drag is the parabola: (h + g s²/2v²)/R - g s/v²', () => {
  const s = yards(60) - 0.98;
  const closed = (0.11684 + (9.80665 * s * s) / (2 * 85.344 ** 2)) / yards(60) - (9.80665 * s) / 85.344 ** 2;
  expect(Math.abs(slopeAtHit(dragless, yards(60)) - closed)).toBeLessThan(1e-5 /* m per m */);
});

it('half a yard at 60 and 100 yd costs 0.7 and 1.3 in (independent point-mass figures: 0.71 and 1.34)', () => {
  const inches = (range: number) => -(slopeAtHit(inventedRig, yards(range)) * yards(0.5)) / 0.0254;
  expect(Math.abs(inches(60) - 0.71)).toBeLessThan(0.07 /* in: the figures are of another arrow */);
  expect(Math.abs(inches(100) - 1.34)).toBeLessThan(0.13 /* in */);
});

describe('slopeAtHit by hand', () => {
  const withDrag = (at: (reynolds: number) => number, dragScale = 1): Rig => {
    const { conditions } = inventedRig;
    return {
      ...inventedRig,
      conditions: { ...conditions, arrow: { ...conditions.arrow, drag: { at }, dragScale } },
    };
  };

  it('is a parabola from where free flight begins, without drag: (h + g s²/2v²)/R - g s/v²', () => {
    const far = { ...inventedRig, geometry: { ...inventedRig.geometry, freeFlight: si<'m'>(8) } };
    const rig = { ...far, conditions: withDrag(() => 0).conditions };
    const [R, s, v] = [50, 42, 85.344];
    const expected = (0.11684 + (9.80665 * s ** 2) / (2 * v ** 2)) / R - (9.80665 * s) / v ** 2;
    expect(Math.abs(slopeAtHit(rig, R) / expected - 1)).toBeLessThan(
      1e-4 /* relative: the least drag there is */,
    );
  });

  it('asks for the drag at the Reynolds number of the launch, 36 507, and takes its factor', () => {
    // 1.225 x 85.344 x 0.0062484 / 1.7894e-5.
    const asked: number[] = [];
    const slope = slopeAtHit(
      withDrag((reynolds) => {
        asked.push(reynolds);
        return 2.5;
      }, 0.8),
      60,
    );
    expect(asked.map(Math.round)).toEqual([36507]);
    expect(slope).toBeCloseTo(
      slopeAtHit(
        withDrag(() => 2),
        60,
      ),
      12,
    );
  });
});
