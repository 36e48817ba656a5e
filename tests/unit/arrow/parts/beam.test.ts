import { describe, expect, it } from 'vitest';
import { buildArrow } from '../../../../src/arrow/build.ts';
import { arrowBeam, type Beam, firstBending, pushLoad } from '../../../../src/arrow/parts/beam.ts';
import { NumericalError } from '../../../../src/numerics/numerical-error.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';

const bare: Beam = { length: si(0.72), stiffness: si(8.5), massPerLength: si(0.0242), loads: [] };
const load = (place: number, mass: number) => ({ place, mass: si<'kg'>(mass) });
const withLoads = (...loads: Beam['loads']): Beam => ({ ...bare, loads });

/** Wave number times length behind a frequency. */
const betaL = (beam: Beam) =>
  Math.sqrt(2 * Math.PI * firstBending(beam).frequency * Math.sqrt(beam.massPerLength / beam.stiffness)) *
  beam.length;

/** Root of a frequency equation by bisection, written out here so that it shares nothing with the solver. */
function bisect(f: (z: number) => number, from: number, to: number): number {
  let [lo, hi] = [from, to];
  for (let i = 0; i < 80; i += 1) {
    const middle = (lo + hi) / 2;
    if (Math.sign(f(middle)) === Math.sign(f(lo))) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2;
}
const { cos, sin, cosh, sinh } = Math;

describe('firstBending', () => {
  it('of a bare beam has beta L = 4.73004 (cos cosh = 1) and nodes at 0.22416 and 0.77584 of the length', () => {
    expect(Math.abs(betaL(bare) - 4.730040744862704)).toBeLessThan(1e-9 /* nine digits of the root */);
    const [rear = 0, front = 0] = firstBending(bare).nodes;
    expect(Math.abs(rear / 0.72 - 0.22416)).toBeLessThan(
      1e-5 /* of the length: print of the handbook figure */,
    );
    expect(Math.abs(front / 0.72 - 0.77584)).toBeLessThan(1e-5 /* of the length */);
  });
  it('between two great masses is that of a beam on two supports: beta L = pi', () =>
    expect(Math.abs(betaL(withLoads(load(0, 1e6), load(0.72, 1e6))) - Math.PI)).toBeLessThan(
      1e-6 /* the mass is a million beams, not infinite */,
    ));
  it('with one great mass is that of a beam supported at one end, free at the other: tan = tanh, 3.926602', () => {
    const exact = bisect((z) => Math.tan(z) - Math.tanh(z), 3.5, 4.5);
    expect(Math.abs(exact - 3.926602312)).toBeLessThan(1e-9 /* the last printed digit */);
    expect(Math.abs(betaL(withLoads(load(0.72, 1e6))) - exact)).toBeLessThan(
      1e-6 /* the mass is a million beams, not infinite */,
    );
  });
  it('with a great mass in front stands still just behind it, and where a beam held there does', () => {
    // Held at one end and free at the other: w = sin(z x)/sin z + sinh(z x)/sinh z from the held end, z = 3.926602.
    const z = 3.926602312;
    const held = bisect((x) => sin(z * x) / sin(z) + sinh(z * x) / sinh(z), 0.5, 0.95);
    const [rear = 0, front = 0, ...more] = firstBending(withLoads(load(0.72, 10))).nodes;
    expect(more).toEqual([]);
    expect(Math.abs(rear / 0.72 - (1 - held))).toBeLessThan(
      1e-3 /* of the length: 10 kg is 574 beams, not infinite */,
    );
    expect(Math.abs(front / 0.72 - 1)).toBeLessThan(1e-3 /* of the length, as above */);
  });
  it('with equal end masses q (of the beam) meets the symmetric half: tan(z/2) + tanh(z/2) + 2 q z = 0', () => {
    // Half a beam of symmetric motion: w = A cos(kx) + C cosh(kx) about the middle, w'' = 0 and EI w''' = -m w^2 w at the end.
    for (const q of [0.05, 0.4, 2]) {
      const exact = bisect((z) => Math.tan(z / 2) + Math.tanh(z / 2) + 2 * q * z, Math.PI + 1e-9, 4.7301);
      const mass = q * 0.72 * 0.0242;
      expect(Math.abs(betaL(withLoads(load(0, mass), load(0.72, mass))) - exact)).toBeLessThan(
        1e-8 /* eight digits of the root */,
      );
    }
  });
  it('with unequal end masses meets the written-out determinant', () => {
    const [q0, q1] = [0.05, 0.6];
    const exact = bisect(
      (z) => {
        const [a, b, c, s, ch, sh] = [q0 * z, q1 * z, cos(z), sin(z), cosh(z), sinh(z)];
        return (
          (ch - c + 2 * a * sh) * (ch - c + b * (s + sh)) -
          (sh - s) * (s + sh + 2 * a * ch + b * (c + ch + 2 * a * sh))
        );
      },
      3,
      4.73,
    );
    const whole = 0.72 * 0.0242;
    expect(Math.abs(betaL(withLoads(load(0, q0 * whole), load(0.72, q1 * whole))) - exact)).toBeLessThan(
      1e-8 /* eight digits of the root */,
    );
  });
  it('with a mass in the middle meets the half beam that is guided there: q (of the beam) weighs half on it', () => {
    // From the middle w' = 0 and w''' = q z w/2, and the far end is free.
    for (const q of [0.1, 1]) {
      const exact = bisect(
        (z) => {
          const h = z / 2;
          const [a, b] = [(cosh(h) + cos(h)) / 2, (sinh(h) + sin(h)) / 2];
          const [d, e] = [(cosh(h) - cos(h)) / 2, (sinh(h) - sin(h)) / 2];
          return (d + (b * q * z) / 2) * e - a * (b + (a * q * z) / 2);
        },
        3,
        4.73,
      );
      expect(Math.abs(betaL(withLoads(load(0.36, q * 0.72 * 0.0242))) - exact)).toBeLessThan(
        1e-8 /* eight digits of the root */,
      );
    }
  });
  it('with equal masses on stiff arms beyond both ends meets the symmetric half with arms', () => {
    // w = A cos + C cosh about the middle; at the end, with an arm of s, w'' + s w''' = 0 and w''' + q z (w + s w') = 0.
    const [q, arm] = [0.3, 0.1];
    const exact = bisect(
      (z) => {
        const [h, s, Q] = [z / 2, arm * z, q * z];
        return (
          (-cos(h) + s * sin(h)) * (sinh(h) + Q * (cosh(h) + s * sinh(h))) -
          (cosh(h) + s * sinh(h)) * (sin(h) + Q * (cos(h) - s * sin(h)))
        );
      },
      2,
      4.73,
    );
    const mass = q * 0.72 * 0.0242;
    const [rear, front] = [load(-0.072, mass), load(0.792, mass)];
    for (const loads of [
      [rear, front],
      [front, rear],
    ])
      expect(Math.abs(betaL(withLoads(...loads)) - exact)).toBeLessThan(1e-8 /* eight digits of the root */);
    // What is beyond the end does not move the middle of a symmetric shape.
    const [first = 0, second = 0, ...more] = firstBending(withLoads(front, rear)).nodes;
    expect(Math.abs(first + second - 0.72)).toBeLessThan(4e-6 /* m: each is found to 1e-6 m */);
    expect(more).toEqual([]);
  });
  it('that is light under three great masses swings as a spring of 48 EI/L^3: w^2 = k (1/M + 1/2m)', () => {
    const great = 1e4 * 0.72 * 0.0242;
    const { frequency } = firstBending(withLoads(load(0, great), load(0.36, great), load(0.72, great)));
    const spring = (48 * 8.5) / 0.72 ** 3;
    expect(Math.abs((2 * Math.PI * frequency) / Math.sqrt(1.5 * (spring / great)) - 1)).toBeLessThan(
      1e-4 /* relative: the beam weighs 1e-4 of a mass */,
    );
  });
  it('that is light under four great masses finds the slower of their two swings: w^2 = 64.8 EI/(m L^3)', () => {
    // Alike and a third of the length apart, the outer two go up as the inner two go down. Loads P at the third points of a
    // beam on two supports bend it there by 5 P L^3/(162 EI), and P = m w^2 v for twice v: w^2 = 2 x 162/5 EI/(m L^3).
    const long: Beam = { ...bare, length: si(7.2) };
    const great = 1e4 * 7.2 * 0.0242;
    const { frequency } = firstBending({
      ...long,
      loads: [0, 2.4, 4.8, 7.2].map((place) => load(place, great)),
    });
    const byHand = Math.sqrt((64.8 * 8.5) / (great * 7.2 ** 3));
    expect(Math.abs((2 * Math.PI * frequency) / byHand - 1)).toBeLessThan(
      1e-4 /* relative: the beam weighs 1e-4 of a mass */,
    );
  });
  it('says so when the masses outweigh the beam too far to find its swing', () => {
    const far = 1e9 * 0.72 * 0.0242;
    expect(() => firstBending(withLoads(load(0, far), load(0.36, far), load(0.72, far)))).toThrow(
      NumericalError,
    );
  });
  it('a mass of nothing changes nothing, wherever it is listed', () => {
    const idle = firstBending(withLoads(load(0.1, 0), load(0.8, 0), load(0.5, 0)));
    expect(Math.abs(idle.frequency / firstBending(bare).frequency - 1)).toBeLessThan(
      1e-12 /* relative, rounding */,
    );
    expect(Math.abs((idle.nodes[0] ?? Number.NaN) / 0.72 - 0.22416)).toBeLessThan(
      1e-5 /* of the length: print of the handbook figure */,
    );
  });
  it('a small mass lowers the frequency as Rayleigh says: by half its kinetic share of the bare motion', () => {
    // At the end of a bare beam the squared motion is 4 times its mean, so f falls by 2 m/M.
    const share = 1e-5;
    const small = firstBending(withLoads(load(0.72, share * 0.72 * 0.0242))).frequency;
    expect(Math.abs((1 - small / firstBending(bare).frequency) / (2 * share) - 1)).toBeLessThan(
      1e-3 /* relative */,
    );
  });
  it('a mass at a node changes nothing', () => {
    const [node = si<'m'>(0)] = firstBending(bare).nodes;
    const ratio = firstBending(withLoads(load(node, 0.001))).frequency / firstBending(bare).frequency;
    expect(Math.abs(ratio - 1)).toBeLessThan(1e-6 /* relative: the node is found to 1e-6 m */);
  });
  it('goes as sqrt(stiffness / mass) / length^2', () => {
    const scaled = firstBending({ ...bare, length: si(1.44), stiffness: si(34) }).frequency;
    expect(Math.abs(scaled / firstBending(bare).frequency - 0.5)).toBeLessThan(1e-10 /* relative */);
    const long = firstBending({ ...bare, length: si(72), massPerLength: si(0.0242 / 4) }).frequency;
    expect(Math.abs((long / firstBending(bare).frequency) * 5000 - 1)).toBeLessThan(1e-10 /* relative */);
  });
  it('an arm beyond the end slows it further', () => {
    const at = (place: number) => firstBending(withLoads(load(place, 0.008))).frequency as number;
    expect(at(0.74)).toBeLessThan(at(0.72));
    expect(at(-0.02)).toBeLessThan(at(0));
  });
  it('refuses what is no beam', () => {
    for (const size of [0, -1, Number.NaN]) {
      expect(() => firstBending({ ...bare, length: si(size) })).toThrow(/above 0/);
      expect(() => firstBending({ ...bare, stiffness: si(size) })).toThrow(/above 0/);
      expect(() => firstBending({ ...bare, massPerLength: si(size) })).toThrow(/above 0/);
    }
    for (const mass of [-1, Number.NaN])
      expect(() => firstBending(withLoads(load(0.1, mass)))).toThrow(/0 or more/);
    expect(() => firstBending(withLoads(load(Number.NaN, 0.001)))).toThrow(DomainError);
  });
});

describe('pushLoad', () => {
  it('by hand: (0.0242 x 0.36 + 0.01) kg x 6000 m/s2 x 0.72^2 / (pi^2 x 8.5)', () => {
    const hand = ((0.0242 * 0.36 + 0.01) * 6000 * 0.72 ** 2) / (Math.PI ** 2 * 8.5);
    expect(Math.abs(pushLoad(withLoads(load(0.72, 0.01), load(0, 0.003)), 6000) - hand)).toBeLessThan(
      1e-12 /* of the buckling load, rounding */,
    );
  });
  it('weight at the front raises it, weight at the nock does not', () => {
    const bareLoad = pushLoad(bare, 6000);
    expect(pushLoad(withLoads(load(0.72, 0.005)), 6000)).toBeGreaterThan(bareLoad);
    expect(pushLoad(withLoads(load(0, 0.005)), 6000)).toBe(bareLoad);
    expect(pushLoad(withLoads(load(0.36, 0.005)), 6000)).toBe(bareLoad);
  });
});

describe('arrowBeam', () => {
  const grains = (count: number) => si<'kg'>(count * 64.79891e-6);
  const inches = (count: number) => si<'m'>(count * 0.0254);
  const target = buildArrow({
    parts: {
      shaft: {
        length: inches(29),
        outerDiameter: si(0.0055),
        innerDiameter: si(0.0038),
        massPerLength: si((7 * 64.79891e-6) / 0.0254),
        deflection: inches(0.5),
      },
      point: { mass: grains(110), shape: 'bullet', length: inches(1) },
      nock: { mass: grains(8) },
    },
  });

  it('takes the shaft as beam and the rest as loads that make up the arrow with it', () => {
    const beam = arrowBeam(target) ?? expect.fail('no beam');
    const sum = beam.loads.reduce((total, { mass }) => total + mass, beam.massPerLength * beam.length);
    expect(Math.abs(sum - target.flying.mass)).toBeLessThan(1e-12 /* kg */);
    expect(beam.loads.map(({ place }) => place < 0 || place > beam.length)).toEqual([true, true]);
  });
  it('places every load from the rear end of the shaft, by hand in inches', () => {
    // Nock in the middle of its 0.25 in; point at a quarter of an inch ahead of the shaft.
    const { loads, length } = arrowBeam(target) ?? expect.fail('no beam');
    expect(length).toBe(inches(29));
    expect(
      loads.map(({ place, mass }) => [place / 0.0254, mass / 64.79891e-6].map((x) => +x.toFixed(9))),
    ).toEqual([
      [-0.125, 8],
      [29.25, 110],
    ]);
  });
  it('is null without a static deflection, though every part is known', () => {
    expect(target.parts).not.toBeNull();
    expect(arrowBeam({ ...target, stiffness: null })).toBeNull();
    expect(arrowBeam({ ...target, parts: null })).toBeNull();
  });
  it('is null for an arrow of totals alone', () => {
    expect(arrowBeam(buildArrow({ totals: { mass: grains(400), diameter: si(0.006) } }))).toBeNull();
  });
});
