import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cantEffects } from '../../src/advice/lean/cant.ts';
import { leanFor } from '../../src/advice/lean/lean.ts';
import { guessRoom } from '../../src/advice/range/misjudge.ts';
import { slopeMarks } from '../../src/advice/range/slope.ts';
import { windEffects } from '../../src/advice/range/wind-drift.ts';
import { windFrom } from '../../src/atmosphere/wind.ts';
import { curvedPart } from '../../src/calibration/sideways/curved-part.ts';
import { fitLateral } from '../../src/calibration/sideways/lateral-fit.ts';
import { USUAL_PRIORS } from '../../src/calibration/sideways/lateral-mark.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { si } from '../../src/quantities/quantity.ts';
import type { Rig } from '../../src/sight/rig.ts';
import { courseRanges, degrees, mirrored, spinningRig, withArrow } from '../unit/advice/invented-bow.ts';
import { groupsOf } from '../unit/calibration/sideways/lateral-marks.ts';

const laws = { seed: 20260102, numRuns: 25 };

/** Bows of many speeds and heights, held over or not, in wind or not, with either helical. */
const rigs: fc.Arbitrary<Rig> = fc
  .record({
    speed: fc.double({ min: 55, max: 100, noNaN: true }),
    peep: fc.double({ min: 0.08, max: 0.15, noNaN: true }),
    cant: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
    lean: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
    sideForce: fc.double({ min: 0, max: 1, noNaN: true }),
    wind: fc.double({ min: 0, max: 8, noNaN: true }),
    from: fc.double({ min: -3, max: 3, noNaN: true }),
    latitude: fc.double({ min: -1.4, max: 1.4, noNaN: true }),
    left: fc.boolean(),
  })
  .map(({ speed, peep, cant, lean, sideForce, wind, from, latitude, left }) => {
    const { conditions, geometry } = withArrow(spinningRig, { sideForce });
    const rig: Rig = {
      ...spinningRig,
      cant: si(cant),
      launchSpeed: si(speed),
      geometry: { ...geometry, peepHeight: si(peep), lean: si(lean) },
      conditions: {
        ...conditions,
        wind: windFrom(si(wind), si(from)),
        place: { latitude: si(latitude), azimuth: null },
      },
    };
    return left ? mirrored(rig) : rig;
  });

it('a mirrored bow gets mirrored costs, leans, slopes and winds, exactly', () => {
  fc.assert(
    fc.property(rigs, (rig) => {
      const other = mirrored(rig);
      const [ours, theirs] = [
        leanFor(rig, fitLateral(rig, []), courseRanges),
        leanFor(other, fitLateral(other, []), courseRanges),
      ];
      expect(theirs.lean).toBe(-ours.lean);
      expect(theirs.bowLean).toBe(-ours.bowLean);
      expect(theirs.sd).toBe(ours.sd);
      expect(theirs.residualMax).toBe(ours.residualMax);
      const [cost, mirroredCost] = [
        cantEffects(rig, [0.05], courseRanges),
        cantEffects(other, [-0.05], courseRanges),
      ];
      for (const [i, { lateral, vertical }] of (cost[0]?.rows ?? []).entries()) {
        expect(mirroredCost[0]?.rows[i]?.lateral).toBe(-lateral);
        expect(mirroredCost[0]?.rows[i]?.vertical).toBe(vertical);
      }
      expect(slopeMarks(other, [40, 60], [0.3])).toEqual(slopeMarks(rig, [40, 60], [0.3]));
      const [blown] = windEffects(rig, si(4), [si(1)], [60]);
      const [blownBack] = windEffects(other, si(4), [si(-1)], [60]);
      expect(blownBack?.rows[0]?.lateral).toBe(-(blown?.rows[0]?.lateral ?? 0));
    }),
    laws,
  );
});

it('after the lean no other lean of the span does better', () => {
  fc.assert(
    fc.property(rigs, (rig) => {
      const fit = fitLateral(rig, []);
      const { lean, left } = leanFor(rig, fit, courseRanges);
      const squares = (values: readonly number[]) => values.reduce((sum, value) => sum + value ** 2, 0);
      const best = squares(left);
      for (const off of [-1e-3, 1e-3]) {
        const turned = { ...rig, geometry: { ...rig.geometry, lean: si<'rad'>(lean + off) } };
        expect(squares(leanFor(turned, fit, courseRanges).now)).toBeGreaterThan(best);
      }
    }),
    laws,
  );
});

it('the room for guesses shrinks as the ring does, and a faster arrow has more', () => {
  fc.assert(
    fc.property(rigs, fc.double({ min: 0.05, max: 0.2, noNaN: true }), (rig, ring) => {
      const [wide] = guessRoom(rig, ring, [45]);
      const [narrow] = guessRoom(rig, ring / 2, [45]);
      const [faster] = guessRoom({ ...rig, launchSpeed: si(rig.launchSpeed * 1.1) }, ring, [45]);
      expect(narrow?.long).toBeLessThan(wide?.long ?? 0);
      expect(faster?.long).toBeGreaterThan(wide?.long ?? 0);
    }),
    laws,
  );
});

it('up a gentle slope marks are longer than down the same slope', () => {
  fc.assert(
    fc.property(rigs, fc.double({ min: 0.02, max: 0.6, noNaN: true }), (rig, slope) => {
      const [up] = slopeMarks(rig, [60], [slope]);
      const [down] = slopeMarks(rig, [60], [-slope]);
      expect(up?.travel).toBeGreaterThan(down?.travel ?? Number.NaN);
    }),
    laws,
  );
});

const course = courseRanges.map((range) => ({ range }));
/** A sixth of what one arrow of a good archer scatters: 36 arrows. */
const patient = (range: number) => (8.33e-4 * range) / 6;

it('finds the curved part of seeded trials within 4 of its standard errors, and half of them within 0.67', () => {
  const offs = Array.from({ length: 60 }, (_, k) => {
    const stream = randomStream(3, k);
    const truth = {
      windage: 0.002 * stream.normal(),
      offset: USUAL_PRIORS.offset.sd * stream.normal(),
      plumb: USUAL_PRIORS.plumb.sd * stream.normal(),
      sideForce: USUAL_PRIORS.side_force.sd * stream.normal(),
    };
    const marks = groupsOf(spinningRig, truth, course, patient).map((mark) => ({
      ...mark,
      lateral: mark.lateral + mark.sd * stream.normal(),
    }));
    const found = curvedPart(spinningRig, fitLateral(spinningRig, marks), courseRanges).at(-1);
    const curved = groupsOf(spinningRig, { plumb: truth.plumb, sideForce: truth.sideForce }, course, patient);
    const straight = groupsOf(spinningRig, {}, course, patient);
    const spin = curvedPart(spinningRig, fitLateral(spinningRig, []), courseRanges).at(-1)?.lateral ?? 0;
    const expected = (curved.at(-1)?.lateral ?? 0) - (straight.at(-1)?.lateral ?? 0) + spin;
    return Math.abs((found?.lateral ?? 0) - expected) / (found?.sd ?? 1);
  });
  expect(Math.max(...offs)).toBeLessThan(4);
  const within = offs.filter((off) => off < 0.6745).length;
  // 30 of 60 expected, with a standard error of 3.9.
  expect(within).toBeGreaterThan(15);
  expect(within).toBeLessThan(45);
});

it('takes clean groups for a bad start in at most 1 trial in 100', () => {
  const near = [5, 8, 12, 16, 20, 25, 30, 40, 50, 60, 80].map((yards) => ({ range: yards * 0.9144 }));
  const clean = groupsOf(spinningRig, { plumb: degrees(0.3) }, near, patient);
  const fits = Array.from({ length: 300 }, (_, k) => {
    const stream = randomStream(7, k);
    return fitLateral(
      spinningRig,
      clean.map((mark) => ({ ...mark, lateral: mark.lateral + mark.sd * stream.normal() })),
    );
  });
  expect(fits.filter(({ launch }) => launch.kind === 'seen').length).toBeLessThanOrEqual(3);
  // 5 % scatter so by chance; the standard error of that is 1.3 %.
  expect(fits.filter(({ chance }) => chance < 0.05).length).toBeLessThanOrEqual(0.09 * fits.length);
  expect(fits.reduce((sum, { widening }) => sum + widening, 0) / fits.length).toBeLessThan(1.08);
});
