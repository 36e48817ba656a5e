import { describe, expect, it } from 'vitest';
import { hitChances, type Spread } from '../../../../src/advice/range/hit-chance.ts';
import { insideRing } from '../../../../src/advice/range/inside-ring.ts';
import { guessRoom } from '../../../../src/advice/range/misjudge.ts';
import { calm } from '../../../../src/atmosphere/wind.ts';
import { flyer } from '../../../../src/flight/trajectory.ts';
import { normalCumulative } from '../../../../src/numerics/distributions.ts';
import { randomStream } from '../../../../src/numerics/random.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { impact } from '../../../../src/sight/zero.ts';
import { dragless, inventedRig, yards } from '../../sight/invented-rig.ts';
import { courseRanges, degrees, inches, mirrored, spinningRig } from '../invented-bow.ts';

const ring = inches(8);

describe('guessRoom', () => {
  const rooms = guessRoom(inventedRig, ring, courseRanges);

  it('a guess off by it puts the arrow on the edge of the ring', () => {
    const flight = flyer(inventedRig.conditions);
    for (const { range, short, long } of rooms)
      for (const [guess, height] of [
        [range + long, ring / 2],
        ...(short === null ? [] : [[range - short, -ring / 2] as const]),
      ] as const) {
        const { marks, zero } = marksFor(inventedRig, [guess]);
        const pin = { down: zero.down + (marks[0]?.travel ?? 0), windage: zero.windage };
        expect(Math.abs(impact(flight, inventedRig, pin, range).height - height)).toBeLessThan(1e-5 /* m */);
      }
  });

  it('shrinks with range, and short guesses have a little more room than long ones', () => {
    for (const [i, { short, long }] of rooms.entries()) {
      expect(long).toBeLessThan(rooms[i - 1]?.long ?? 1000);
      if (short !== null) expect(short).toBeGreaterThan(long);
    }
  });

  it('at 20 yd no guess too short leaves an 8 in ring: the highest mark still hits it', () =>
    expect(rooms[0]?.short).toBeNull());

  it('without drag, from the eye: half the ring over g x/2v^2 per metre, to first order', () => {
    // y(x; G) = x (tan a(G)) - g x^2/2v^2 with tan a = g G/2v^2 for flat fire: dy/dG = g x/2v^2.
    const fromEye = {
      ...dragless,
      geometry: { ...dragless.geometry, peepHeight: si<'m'>(0), freeFlight: si<'m'>(0) },
    };
    for (const { range, heightPerGuess, long } of guessRoom(fromEye, ring, courseRanges)) {
      const slope = (9.80665 * range) / (2 * 85.344 ** 2);
      expect(Math.abs(heightPerGuess / slope - 1)).toBeLessThan(
        0.02 /* relative: the launch rises up to 3.6 deg */,
      );
      expect(Math.abs((long * slope) / (ring / 2) - 1)).toBeLessThan(
        0.02 /* of the ring: the second order of the fall */,
      );
    }
  });
});

describe('insideRing', () => {
  it('round and centred: 1 - exp(-r^2/2s^2)', () => {
    for (const ratio of [0.1, 0.5, 1, 2, 5, 40]) {
      const exact = 1 - Math.exp((-ratio * ratio) / 2);
      const found = insideRing(ratio * 0.03, { height: 0, lateral: 0, upward: 0.03, sideways: 0.03 });
      expect(Math.abs(found - exact)).toBeLessThan(1e-8 /* of all shots: the quadrature */);
    }
  });

  it('a very flat scatter is the normal share within the ring', () => {
    const found = insideRing(0.1, { height: 0, lateral: 0, upward: 1e-5, sideways: 0.1 });
    expect(Math.abs(found - 0.6826894921)).toBeLessThan(
      1e-6 /* of all shots: the scatter is not quite flat */,
    );
  });

  it('is 0 far off and 1 in a wide ring; without scatter it is all or nothing', () => {
    expect(insideRing(0.1, { height: 1, lateral: 0, upward: 0.01, sideways: 0.01 })).toBe(0);
    expect(insideRing(1, { height: 0, lateral: 0.1, upward: 0.01, sideways: 0.01 })).toBeGreaterThan(
      0.999999,
    );
    expect(insideRing(0.1, { height: 0.05, lateral: 0.05, upward: 0, sideways: 0 })).toBe(1);
    expect(insideRing(0.1, { height: 0.08, lateral: 0.08, upward: 0, sideways: 0 })).toBe(0);
  });
});

describe('hitChances', () => {
  const spread: Spread = {
    guess: 0.06,
    cant: si(degrees(1)),
    windAcross: si(1.5),
    windAlong: si(1),
    arrow: 8.33e-4,
  };
  const chances = hitChances(spinningRig, ring, courseRanges, spread);

  it('fall with range, and mending any one cause helps', () => {
    for (const [i, { chance, without }] of chances.entries()) {
      expect(chance).toBeLessThan(chances[i - 1]?.chance ?? 1);
      for (const mended of Object.values(without)) expect(mended).toBeGreaterThanOrEqual(chance - 1e-9);
    }
  });

  it('with range, level and air known it is the archer alone: 1 - exp(-r^2/2(s x)^2)', () => {
    const alone = {
      guess: 0,
      cant: si<'rad'>(0),
      windAcross: si<'m/s'>(0),
      windAlong: si<'m/s'>(0),
      arrow: 8.33e-4,
    };
    for (const { range, chance } of hitChances(inventedRig, ring, courseRanges, alone)) {
      const s = 8.33e-4 * range;
      expect(Math.abs(chance - (1 - Math.exp(-((ring / 2) ** 2) / (2 * s * s))))).toBeLessThan(
        1e-6 /* of all shots: the quadrature */,
      );
    }
  });

  it('is what 3000 shots through the full model give, to 3 standard errors', () => {
    const range = yards(50);
    const [expected] = hitChances(inventedRig, ring, [range], spread);
    const stream = randomStream(11, 0);
    const hits = Array.from({ length: 3000 }, () => {
      const guess = range * (1 + spread.guess * stream.normal());
      const wind = {
        ...calm,
        across: si<'m/s'>(spread.windAcross * stream.normal()),
        tail: si<'m/s'>(spread.windAlong * stream.normal()),
      };
      const shot = {
        ...inventedRig,
        cant: si<'rad'>(spread.cant * stream.normal()),
        conditions: { ...inventedRig.conditions, wind },
      };
      const aimed = pinAt(guess);
      const { height, lateral } = impact(flyer(shot.conditions), shot, aimed, range);
      const s = spread.arrow * range;
      return Math.hypot(height + s * stream.normal(), lateral + s * stream.normal()) <= ring / 2;
    }).filter(Boolean).length;
    const chance = expected?.chance ?? Number.NaN;
    expect(Math.abs(hits / 3000 - chance)).toBeLessThan(3 * Math.sqrt((chance * (1 - chance)) / 3000));
  });

  it('a guess off by more than the hits scatter is still counted to 1e-4', () => {
    // With a steady archer the chance is that of the guess lying within the room the ring leaves.
    const steady = {
      ...spread,
      guess: 0.1,
      cant: si<'rad'>(0),
      windAcross: si<'m/s'>(0),
      windAlong: si<'m/s'>(0),
      arrow: 2e-5,
    };
    const [room] = guessRoom(inventedRig, ring, [yards(60)]);
    const [found] = hitChances(inventedRig, ring, [yards(60)], steady);
    const sd = 0.1 * yards(60);
    const expected = normalCumulative((room?.long ?? 0) / sd) - normalCumulative(-(room?.short ?? 0) / sd);
    expect(Math.abs((found?.chance ?? 0) - expected)).toBeLessThan(1e-4 /* of all shots */);
  });

  it('is the same for a mirrored bow', () => {
    for (const [i, { chance }] of hitChances(mirrored(spinningRig), ring, courseRanges, spread).entries())
      expect(Math.abs(chance - (chances[i]?.chance ?? 0))).toBeLessThan(1e-12 /* of all shots, rounding */);
  });
});

/** The pin of a guessed range, by the marks' own table. */
const table = marksFor(
  inventedRig,
  Array.from({ length: 101 }, (_, i) => yards(30) + (i * yards(40)) / 100),
);
function pinAt(guess: number): { down: number; windage: number } {
  const place = Math.min(Math.max((guess - yards(30)) / (yards(40) / 100), 0), 99.999);
  const i = Math.floor(place);
  const [a, b] = [table.marks[i]?.travel ?? Number.NaN, table.marks[i + 1]?.travel ?? Number.NaN];
  return { down: table.zero.down + a + (place - i) * (b - a), windage: 0 };
}
