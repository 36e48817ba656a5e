import { describe, expect, it } from 'vitest';
import {
  COMPOUND_VIRTUAL_MASS,
  efficiency,
  fitBowEnergy,
  launchEnergy,
  launchSpeed,
  speedPerMass,
} from '../../../src/bow/energy.ts';
import { si } from '../../../src/quantities/quantity.ts';

const grains = (count: number) => si<'kg'>(count * 64.79891e-6);
const shot = (mass: number, speed: number, sd = 0.3) => ({
  mass: grains(mass),
  speed: si<'m/s'>(speed),
  speedSd: si<'m/s'>(sd),
});

describe('one arrow and the prior', () => {
  const bow = fitBowEnergy([shot(450, 85)]);

  it('gives that arrow its own speed and error back', () => {
    const { value, sd } = launchSpeed(bow, grains(450));
    expect(Math.abs(value - 85)).toBeLessThan(1e-9 /* m/s: the fit passes through its only reading */);
    expect(Math.abs(sd - 0.3)).toBeLessThan(1e-6 /* m/s: covariance by differences */);
  });
  it('is the closed form to rounding, whatever the speed: K of the prior, E = (m + K) v^2/2', () => {
    const prior = COMPOUND_VIRTUAL_MASS.value;
    for (const speed of [82.296, 85.344, 88.392]) {
      const { energy, virtualMass } = fitBowEnergy([shot(450, speed, 0.4572)]);
      expect(Math.abs(virtualMass / prior - 1)).toBeLessThan(1e-12 /* relative: roundings of ln K */);
      const exact = ((grains(450) + prior) * speed ** 2) / 2;
      expect(Math.abs(energy / exact - 1)).toBeLessThan(1e-12 /* relative: roundings of ln E */);
    }
  });
  it('takes the virtual mass from the prior, and says so', () => {
    expect(Math.abs(bow.virtualMass / COMPOUND_VIRTUAL_MASS.value - 1)).toBeLessThan(1e-9 /* relative */);
    expect(bow.virtualMassFrom).toBe('prior');
    expect(Math.abs(Math.sqrt(bow.logCovariance[1]?.[1] ?? 0) - 0.45)).toBeLessThan(1e-6 /* of ln K */);
  });
  it('predicts 425 gr by hand: 85 sqrt(535/510) = 87.0584 m/s', () => {
    expect(Math.abs(launchSpeed(bow, grains(425)).value - 85 * Math.sqrt(535 / 510))).toBeLessThan(
      1e-8 /* m/s */,
    );
  });
  it('is the less sure the further the mass is from the measured one', () => {
    const sds = [450, 475, 500, 600].map((mass) => launchSpeed(bow, grains(mass)).sd as number);
    expect(sds).toEqual(sds.toSorted((a, b) => a - b));
  });
  it('carries the prior into 550 gr by hand: v (K/2)(1/(m0+K) - 1/(m+K)) 0.45 beside the scaled reading', () => {
    // K/2 (1/535 - 1/635) = 42.5 x 2.94356e-4 = 0.0125101; x 0.45 = 0.562956 %; the reading: 0.3/85 = 0.352941 %.
    const { value, sd } = launchSpeed(bow, grains(550));
    expect(Math.abs(sd / value - Math.hypot(0.00562956, 0.00352941))).toBeLessThan(1e-7 /* of the speed */);
  });
  it('at 350 gr puts 80 % of the energy in the arrow, give or take 7', () => {
    const share = efficiency(bow, grains(350));
    expect(Math.abs(share.value - 350 / 435)).toBeLessThan(1e-9 /* of 1 */);
    // 0.8046 x 0.1954 x 0.45 = 0.0707
    expect(Math.abs(share.sd - 0.0707)).toBeLessThan(5e-5 /* print of the hand figure */);
  });
});

describe('several arrows', () => {
  const made = (mass: number) => Math.sqrt((2 * 120) / (mass * 64.79891e-6 + 0.006));

  it('two without a prior give energy and virtual mass back', () => {
    const bow = fitBowEnergy([shot(380, made(380)), shot(520, made(520))], null);
    expect(Math.abs(bow.energy - 120)).toBeLessThan(1e-6 /* J */);
    expect(Math.abs(bow.virtualMass - 0.006)).toBeLessThan(1e-9 /* kg */);
    expect(bow.virtualMassFrom).toBe('arrows');
  });
  it('three apart enough outweigh the prior', () => {
    const bow = fitBowEnergy([
      shot(300, made(300), 0.1),
      shot(450, made(450), 0.1),
      shot(700, made(700), 0.1),
    ]);
    expect(bow.virtualMassFrom).toBe('arrows');
    expect(Math.abs(bow.virtualMass - 0.006)).toBeLessThan(3e-4 /* kg: the prior still pulls by its share */);
  });
  it('errors are those of a straight line through 1/v^2 when there is no prior', () => {
    // Two readings: 1/v^2 = (m + K)/2E, so K = (m1 y2 - m2 y1)/(y1 - y2) with y = 1/v^2; relative sd of y is 2 sd/v.
    const [m1, m2] = [grains(380) as number, grains(520) as number];
    const [v1, v2] = [made(380), made(520)];
    const K = (a: number, b: number) => (m1 / b ** 2 - m2 / a ** 2) / (1 / a ** 2 - 1 / b ** 2);
    const h = 1e-5;
    const byFirst = (K(v1 + h, v2) - K(v1 - h, v2)) / (2 * h);
    const bySecond = (K(v1, v2 + h) - K(v1, v2 - h)) / (2 * h);
    const bow = fitBowEnergy([shot(380, v1), shot(520, v2)], null);
    const sd = Math.sqrt(bow.logCovariance[1]?.[1] ?? 0) * bow.virtualMass;
    expect(Math.abs(sd / (0.3 * Math.hypot(byFirst, bySecond)) - 1)).toBeLessThan(
      1e-3 /* relative: differences */,
    );
  });
  it('widens its errors when arrows scatter more than they say', () => {
    const calm = fitBowEnergy([shot(400, made(400)), shot(500, made(500)), shot(600, made(600))]);
    const wild = fitBowEnergy([shot(400, made(400) + 3), shot(500, made(500) - 3), shot(600, made(600) + 3)]);
    expect(wild.logCovariance[0]?.[0]).toBeGreaterThan(4 * (calm.logCovariance[0]?.[0] ?? 0));
  });
  it('says so when only a negative virtual mass would do: a heavier arrow no slower', () => {
    expect(() => fitBowEnergy([shot(400, 90), shot(500, 90)], null)).toThrow(/no virtual mass fits/);
    expect(fitBowEnergy([shot(400, 90), shot(500, 90)]).virtualMass).toBeGreaterThan(0);
  });
  it('refuses what tells nothing', () => {
    expect(() => fitBowEnergy([])).toThrow(/at least one/);
    expect(() => fitBowEnergy([shot(400, 90), shot(400, 91)], null)).toThrow(/two or more/);
    expect(() => fitBowEnergy([shot(400, 0)])).toThrow(/above 0/);
  });
});

describe('what follows from energy and virtual mass', () => {
  const bow = fitBowEnergy([shot(450, 85)]);

  it('speed per mass is the slope of the speed', () => {
    const h = 1e-7;
    const at = (mass: number) => launchSpeed(bow, si(mass)).value;
    const slope = (at(grains(450) + h) - at(grains(450) - h)) / (2 * h);
    expect(Math.abs(speedPerMass(bow, grains(450)).value / slope - 1)).toBeLessThan(1e-6 /* relative */);
  });
  it('its error, and that of the energy, are those of a shifted bow', () => {
    // One arrow: ln K moves by 0.45 with v(450) held, and v by 0.3; both shifts done by hand on the formulas.
    const shifted = (speed: number, K: number) => {
      const E = ((grains(450) + K) * speed ** 2) / 2;
      return (mass: number) => {
        const v = Math.sqrt((2 * E) / (mass + K));
        return { slope: -v / (2 * (mass + K)), energy: (mass * v * v) / 2 };
      };
    };
    const K = bow.virtualMass;
    const h = 1e-4;
    const by = (of: 'slope' | 'energy') =>
      Math.hypot(
        (0.45 *
          (shifted(85, K * Math.exp(h))(grains(600))[of] - shifted(85, K * Math.exp(-h))(grains(600))[of])) /
          (2 * h),
        (0.3 * (shifted(85 + h, K)(grains(600))[of] - shifted(85 - h, K)(grains(600))[of])) / (2 * h),
      );
    expect(Math.abs(speedPerMass(bow, grains(600)).sd / by('slope') - 1)).toBeLessThan(1e-5 /* relative */);
    expect(Math.abs(launchEnergy(bow, grains(600)).sd / by('energy') - 1)).toBeLessThan(1e-5 /* relative */);
  });
});
