import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { markUncertainty } from '../../../../src/calibration/mark-uncertainty.ts';
import { at } from '../../../../src/numerics/at.ts';
import { inUnits, type Session } from '../../../../src/reports/session.ts';
import { type SightWritten, withSightAsked } from '../../../../src/reports/standing/sight-asked.ts';
import { standingAt } from '../../../../src/reports/standing/standing-at.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { yards } from '../../sight/invented-rig.ts';

/** Peep to pin 32 in, peep height 4.4 in, zeroed at 20 yd. */
const text = readFileSync('examples/which-build/setup.yaml', 'utf8');
const withExtension = text.replace('peep_to_pin: 32 in', 'peep_to_pin: 32 in\n  extension: 6 in');
const session = inUnits(openSetup(withExtension, 'stand.yaml'), 'imperial');
const asked = (written: Partial<SightWritten>, of = session): Session =>
  withSightAsked(of, { peepToPin: null, extension: null, peepHeight: null, ...written });

const RANGES = [20, 30, 60, 80, 100].map(yards);
const marksOf = ({ calibration }: Session) => marksFor(calibration.rig, RANGES).marks;
const before = marksOf(session);
const INCH = 0.0254;

describe('a sight moved towards the archer, 30 in from the peep in place of 32', () => {
  const moved = asked({ peepToPin: '30 in' });

  it('travel goes as the distance: similar triangles, 30/32 of each', () => {
    for (const [i, { travel }] of marksOf(moved).entries())
      expect(Math.abs(travel - (30 / 32) * at(before, i).travel)).toBeLessThan(1e-8 /* m: root finding */);
  });

  it('the zero range reads as it did, and a unit of the scale is as long', () => {
    const scale = session.calibration.rig.scale ?? expect.fail('a scale');
    for (const { reading, travel } of marksOf(moved))
      expect(Math.abs((reading ?? Number.NaN) - scale.atZero - travel / scale.travelPerUnit)).toBeLessThan(
        1e-9 /* units: rounding */,
      );
    expect(at(marksOf(moved), 0).reading).toBeCloseTo(
      at(before, 0).reading ?? Number.NaN,
      6 /* of a unit: root finding */,
    );
  });

  it('what it is off by on the target stays', () => {
    const onTarget = ({ calibration }: Session): readonly number[] =>
      markUncertainty(calibration, marksFor(calibration.rig, RANGES)).map(({ onTargetSd }) => onTargetSd);
    for (const [i, sd] of onTarget(moved).entries()) {
      // Relative. The part of the scale's own place is smaller on the target by 30/32 at most.
      expect(sd / at(onTarget(session), i)).toBeGreaterThan(0.93);
      expect(sd / at(onTarget(session), i)).toBeLessThan(1.08);
    }
  });

  it('the extension says the same: 4 in ahead of the grip in place of 6', () => {
    expect(asked({ extension: '4 in' }).calibration.rig.geometry.peepToPin).toBeCloseTo(30 * INCH, 12);
  });

  it('serves a build as well, whose own rig is put together anew', () => {
    const build = 'slim shaft';
    const there = marksOf(standingAt(moved, { place: null, build }));
    for (const [i, { travel }] of marksOf(standingAt(session, { place: null, build })).entries())
      expect(Math.abs(at(there, i).travel - (30 / 32) * travel)).toBeLessThan(
        2e-6 /* m: the scale's part in its speed */,
      );
  });
});

it('a peep higher by a quarter inch moves every pin by E δ/R: travel by E δ (1/R - 1/20 yd)', () => {
  const moved = marksOf(asked({ peepHeight: '4.65 in' }));
  for (const [i, { travel, range }] of moved.entries()) {
    const byHand = 32 * INCH * 0.25 * INCH * (1 / range - 1 / yards(20));
    // m: the arrow also starts that much lower and a hair steeper, a hundredth of it.
    expect(Math.abs(travel - at(before, i).travel - byHand)).toBeLessThan(1e-8 + 0.02 * Math.abs(byHand));
  }
});

it.each<[Partial<SightWritten>, string]>([
  [{ peepToPin: '30 in', extension: '4 in' }, 'extension and peepToPin say the same thing'],
  [{ peepToPin: '2 yd' }, 'peepToPin: "2 yd" is above the limit'],
])('%j is refused', (written, message) => {
  expect(() => asked(written)).toThrow(message);
});

it('an extension needs the one that was measured', () => {
  const without = inUnits(openSetup(text, 'stand.yaml'), 'imperial');
  expect(() => asked({ extension: '4 in' }, without)).toThrow('Write "extension: 5.75 in" under "sight:"');
});
