import { describe, expect, it } from 'vitest';
import { buildArrow } from '../../../../src/arrow/build.ts';
import { liftsFrom, spinOf } from '../../../../src/arrow/lift/attitude.ts';
import { bodyInterference, spinPerMetre, spinUp } from '../../../../src/arrow/lift/spin.ts';
import type { ArrowParts } from '../../../../src/arrow/parts/parts.ts';
import { fieldPoint, ridgeCampParts } from '../ridge-camp-arrow.ts';

const bladedParts: ArrowParts = { ...ridgeCampParts, point: { ...fieldPoint, shape: 'fixed_blade' } };
const bladed = buildArrow({ parts: bladedParts });
const surfaces = bladed.surfaces ?? expect.fail('no surfaces');
const attitude = bladed.flying.attitude ?? expect.fail('no attitude');
const ringOf = (ring: typeof surfaces.vanes) => ring ?? expect.fail('no ring');
const [vanes, blades] = [ringOf(surfaces.vanes), ringOf(surfaces.blades)];
const { balance } = bladed.flying;
const wake = surfaces.wake ?? expect.fail('no wake');
const relative = (value: number, expected: number) => Math.abs(value / expected - 1);

describe('spinOf', () => {
  const lengths = [vanes, blades].map(({ fin, count, slope, roll }) =>
    spinUp(fin, count, slope, attitude.axialInertia, roll),
  );
  const [ofVanes = Number.NaN, ofBlades = Number.NaN] = lengths;

  it('with straight blades the vanes spin the arrow by Lb/(Lv + Lb) of theirs, and it settles in 1/(1/Lv + 1/Lb)', () => {
    const alone = spinPerMetre(vanes.fin, vanes.angle, bodyInterference(vanes.fin));
    expect(relative(attitude.spinPerMetre, (alone * ofBlades) / (ofVanes + ofBlades))).toBeLessThan(
      1e-12 /* relative, rounding */,
    );
    expect(relative(attitude.spinUp, 1 / (1 / ofVanes + 1 / ofBlades))).toBeLessThan(1e-12 /* the same */);
  });

  it('is proportional to the angle asked about', () => {
    const { axialInertia } = attitude;
    const asked = (angle: number) => spinOf(axialInertia, surfaces, true, angle).spinPerMetre;
    expect(relative(asked(2 * vanes.angle), 2 * attitude.spinPerMetre)).toBeLessThan(1e-12 /* rounding */);
    expect(asked(0)).toBe(0);
  });

  it('without the body neither forces nor damps by it', () => {
    const { fin, count, slope, angle } = vanes;
    const free = spinOf(1e-7, { ...surfaces, blades: null }, false);
    expect(relative(free.spinPerMetre, spinPerMetre(fin, angle))).toBeLessThan(1e-12 /* rounding */);
    expect(relative(free.spinUp, spinUp(fin, count, slope, 1e-7))).toBeLessThan(1e-12 /* rounding */);
  });

  it('with blades alone an arrow has no spin of its own, and loses any', () => {
    const damped = spinOf(attitude.axialInertia, { ...surfaces, vanes: null }, true);
    expect(damped.spinPerMetre).toBe(0);
    expect(relative(damped.spinUp, ofBlades)).toBeLessThan(1e-12 /* rounding */);
  });
});

describe('what lifts', () => {
  it('is nose, vanes and blades, each from the balance point; the wake is off the vanes', () => {
    const lifts = liftsFrom(balance, surfaces);
    const by = (slope: number, place: number) => ({ slope, place: place - balance });
    expect(lifts.map(({ slope, place }) => ({ slope, place }))).toEqual([
      by(2, surfaces.nose.place),
      by(vanes.ringSlope * (1 - wake.share), vanes.place),
      by(blades.ringSlope, blades.place),
    ]);
  });

  it('makes the sums: slope, slope x place, slope x place squared, by hand', () => {
    const places = [surfaces.nose, vanes, blades].map(({ place }) => place - balance);
    const slopes = [2, vanes.ringSlope - vanes.ringSlope * wake.share, blades.ringSlope];
    const sum = (power: number) =>
      slopes.reduce((total, slope, i) => total + slope * (places[i] ?? Number.NaN) ** power, 0);
    expect(relative(attitude.normalSlope, sum(0))).toBeLessThan(1e-12 /* rounding */);
    expect(relative(attitude.firstMoment, sum(1))).toBeLessThan(1e-12 /* rounding */);
    expect(relative(attitude.secondMoment, sum(2))).toBeLessThan(1e-12 /* rounding */);
  });

  it('is kept by fin: what the wake takes beside what it leaves, and how sure each is', () => {
    const fins = attitude.fins ?? expect.fail('no fins');
    expect(relative(fins.wake?.slope ?? Number.NaN, vanes.ringSlope * wake.share)).toBeLessThan(
      1e-12 /* rounding */,
    );
    expect(fins.wake?.halfAngle).toBe(wake.halfAngle);
    expect([fins.vanes?.count, fins.blades?.count]).toEqual([3, 3]);
    expect([fins.uncertainty.blades, fins.uncertainty.wake]).toEqual([0.1, 0.35]);
    // The law's 10 %, and half of what the layer takes over what it leaves.
    const layer = (1 - vanes.immersion) / 2 / vanes.immersion;
    expect(relative(fins.uncertainty.vanes ** 2, 0.01 + layer ** 2)).toBeLessThan(1e-12 /* rounding */);
  });

  it('has no wake without blades, no vanes on a bare shaft, and is sure of what is not there', () => {
    const field = buildArrow({ parts: ridgeCampParts });
    const finsOf = ({ flying }: typeof field) => flying.attitude?.fins ?? expect.fail('no fins');
    expect(finsOf(field)).toMatchObject({ blades: null, wake: null });
    expect(finsOf(field).vanes?.slope).toBe(field.surfaces?.vanes?.ringSlope);
    const bare = buildArrow({ parts: { ...bladedParts, vanes: undefined } });
    expect(finsOf(bare)).toMatchObject({ vanes: null, wake: null, uncertainty: { vanes: 0 } });
  });
});
