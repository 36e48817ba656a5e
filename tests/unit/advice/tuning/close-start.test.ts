import { describe, expect, it } from 'vitest';
import { closeStart } from '../../../../src/advice/tuning/close-start.ts';
import { heightsAtSpeed } from '../../../../src/advice/tuning/mark-heights.ts';
import { INCH, YARD } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { assembled, huntingSetup } from '../../../reference/hunting-setup.ts';

const FPS = 0.3048;
const KNOWN = { peepHeight: 0.1 * INCH, speed: 1.5 * FPS, drag: 0.15 };

/** An independent program's figures: near range of 50 yd, error there, where a start at 3 yd stands, how high it hits 50 yd. */
it.each([
  [250, 4.6, 3.17, 4.4, 53, 3.9],
  [280, 4.6, 3.97, 3.4, 65, 17.7],
  [310, 4.6, 4.86, 2.8, 79, 27.8],
  [280, 3.5, 3.03, 4.5, 50, 0.5],
])('%d ft/s, peep %f in: starts at %f yd, %f in', (speed, peep, near, sd, stands, high) => {
  const { rig } = assembled(huntingSetup({ speed, peep }));
  const found = closeStart(rig, si(50 * YARD), si(3 * YARD), KNOWN);
  expect(Math.abs((found.near ?? 0) / YARD - near)).toBeLessThan(0.0051 /* yd, the printed digit */);
  expect(Math.abs(found.farHeightSd / INCH - sd)).toBeLessThan(0.06 /* in, the printed digit */);
  expect(Math.abs((found.farForCentred ?? 0) / YARD - stands)).toBeLessThan(0.55 /* yd, the printed digit */);
  expect(Math.abs(found.farHeight / INCH - high)).toBeLessThan(
    0.11 /* in, the printed digit and the arrow's last per mille */,
  );
});

describe('close start of the common bow', () => {
  const { rig } = assembled(huntingSetup({}));
  it('the hole counts for most of it: 3.1, 0.4, 1.2, 0.6, 0.4 in', () => {
    const { parts } = closeStart(rig, si(50 * YARD), null, KNOWN);
    const expected = [3.1, 0.4, 1.2, 0.6, 0.4];
    for (const [i, { height }] of parts.entries())
      expect(Math.abs(height / INCH - (expected[i] ?? 0))).toBeLessThan(0.06 /* in, the printed digit */);
  });
  it('centred at the near range it hits the far one', () => {
    const { near } = closeStart(rig, si(50 * YARD), null, KNOWN);
    expect(Math.abs(closeStart(rig, si(50 * YARD), near, KNOWN).farHeight)).toBeLessThan(
      1e-4 /* m, of the crossing */,
    );
  });
  it('an arrow centred far out never comes back when it is past its peak there', () =>
    expect(closeStart(rig, si(20 * YARD), si(14 * YARD), KNOWN).farForCentred).toBeNull());
  it('1 ft/s is 0.42 in at 50 yd and 1.75 in at 100 yd', () => {
    const [near, far] = heightsAtSpeed(rig, si(FPS), [si(50 * YARD), si(100 * YARD)]);
    expect(Math.abs((near?.height ?? 0) / INCH - 0.42)).toBeLessThan(
      0.03 /* in: free flight begins a yard from the eye, 4 % of the fall */,
    );
    expect(Math.abs((far?.height ?? 0) / INCH - 1.75)).toBeLessThan(0.05 /* in: 2 % of the fall */);
  });
});
