import { describe, expect, it } from 'vitest';
import {
  type ScatterQuestion,
  scatterHits as scatterJob,
  scatterQuestion,
} from '../../../../src/advice/scatter/scatter.ts';
import {
  CAUSES,
  type Cause,
  differenceOf,
  type Variation,
} from '../../../../src/advice/scatter/scatter-causes.ts';
import { type Hits, scatterByRange } from '../../../../src/advice/scatter/scatter-groups.ts';
import { launchFromEye } from '../../../../src/flight/launch.ts';
import { fly } from '../../../../src/flight/trajectory.ts';
import { randomStream } from '../../../../src/numerics/random.ts';
import { type Metres, si } from '../../../../src/quantities/quantity.ts';
import { type Variation as Build, huntingArrow } from '../../flight/hunting-arrow.ts';
import { conditionsOf, pointArrow } from '../../flight/point-arrow.ts';

const YARD = 0.9144; // m
/** 1 gr, 0.05 in, 1 ft/s, 0.0015 in, half a degree, a tenth of a degree, an inch a second at the tail. */
const CAREFUL: Variation = {
  mass: si(64.79891e-6),
  balance: si(0.00127),
  speed: si(0.3048),
  bend: si(3.81e-5),
  vane: si(Math.PI / 360),
  head: si(Math.PI / 1800),
  nockTravel: si(0.05),
};
const launch = launchFromEye(si(85.344), si(0.03));
const NOTHING: Variation = {
  mass: si(0),
  balance: si(0),
  speed: si(0),
  bend: si(0),
  vane: si(0),
  head: si(0),
  nockTravel: si(0),
};

function question(build: Build = {}, variation: Variation = CAREFUL, ...yards: number[]): ScatterQuestion {
  const arrow = huntingArrow(build);
  return scatterQuestion(arrow, conditionsOf(arrow.flying), {
    launch,
    virtualMass: si(0.0055),
    variation,
    seed: 7,
    ranges: (yards.length === 0 ? [60] : yards).map((range): Metres => si(range * YARD)),
  });
}

const scatterHits = (question: ScatterQuestion, only: Cause | null, from: number, to: number): Float64Array =>
  scatterJob({ question, only, from, to });

const allHits = (asked: ScatterQuestion, arrows: number): Hits => ({
  all: scatterHits(asked, null, 0, arrows),
  alone: {
    mass: scatterHits(asked, 'mass', 0, arrows),
    balance: scatterHits(asked, 'balance', 0, arrows),
    speed: scatterHits(asked, 'speed', 0, arrows),
    bend: scatterHits(asked, 'bend', 0, arrows),
    vane: scatterHits(asked, 'vane', 0, arrows),
    head: scatterHits(asked, 'head', 0, arrows),
    nockTravel: scatterHits(asked, 'nockTravel', 0, arrows),
  },
});

describe('scatterHits', () => {
  it('is the same however the arrows are shared out', () => {
    const asked = question({}, CAREFUL, 40, 80);
    const whole = scatterHits(asked, null, 0, 9);
    expect([...scatterHits(asked, null, 0, 4), ...scatterHits(asked, null, 4, 9)]).toEqual([...whole]);
    expect(whole.length).toBe(2 * 2 * 9);
  });

  it('survives being copied to a thread', () => {
    const asked = question();
    expect([...scatterHits(structuredClone(asked), null, 0, 3)]).toEqual([...scatterHits(asked, null, 0, 3)]);
  });

  it('without variation every arrow hits one place', () => {
    const hits = scatterHits(question({}, NOTHING), null, 0, 3);
    expect(new Set(hits.filter((_, i) => i % 2 === 0)).size).toBe(1);
  });

  it('another seed gives other hits', () => {
    const asked = question();
    expect(scatterHits({ ...asked, seed: 8 }, null, 0, 1)[0]).not.toBe(scatterHits(asked, null, 0, 1)[0]);
  });

  it('speed alone spreads heights as the everyday model moves with speed, to 1 % of each difference', () => {
    const asked = question({}, CAREFUL, 60);
    const hits = scatterHits(asked, 'speed', 0, 5);
    const conditions = conditionsOf(huntingArrow().flying);
    const heightAt = (speed: number) =>
      fly(conditions, launchFromEye(si(speed), si(0.03)), [60 * YARD])[0]?.height ?? Number.NaN;
    const perSpeed = (heightAt(86.344) - heightAt(84.344)) / 2;
    const nominal = scatterHits(question({}, NOTHING, 60), null, 0, 1)[0] ?? Number.NaN;
    for (let i = 0; i < 5; i++) {
      const { speed } = differenceOf(CAREFUL, 'speed', 7, i);
      const expected = perSpeed * speed;
      expect(Math.abs((hits[2 * i] ?? 0) - nominal - expected)).toBeLessThan(
        0.02 * Math.abs(expected) + 1e-4 /* m */,
      );
    }
  });

  it('a heavier arrow leaves slower, by the virtual mass of the bow, and lands low', () => {
    const asked = question({}, { ...NOTHING, mass: si(1e-4) });
    const nominal = scatterHits(question({}, NOTHING), null, 0, 1)[0] ?? Number.NaN;
    for (let i = 0; i < 4; i++) {
      const { mass } = differenceOf(asked.variation, null, 7, i);
      const [height = 0] = scatterHits(asked, null, i, i + 1);
      expect(Math.sign(height - nominal)).toBe(-Math.sign(mass));
    }
  });

  it('with blades in front a helical halves the groups of straight vanes or better; with a field point it hardly matters', () => {
    const group = (build: Build) =>
      scatterByRange(allHits(question(build), 96), [si(60 * YARD)], 12)[0]?.group ?? Number.NaN;
    expect(group({ shape: 'fixed_blade' })).toBeLessThan(0.5 * group({ shape: 'fixed_blade', turn: 'none' }));
    expect(group({}) / group({ turn: 'none' })).toBeGreaterThan(0.8);
  });

  it('refuses an arrow without parts', () => {
    const arrow = { ...huntingArrow(), parts: null };
    expect(() =>
      scatterQuestion(arrow, conditionsOf(pointArrow(0.03, 0.006, 2)), {
        launch,
        virtualMass: si(0.005),
        variation: CAREFUL,
        seed: 1,
        ranges: [si(50)],
      }),
    ).toThrow(/parts/);
  });
});

describe('differenceOf', () => {
  it('one cause alone has the numbers it has among all', () => {
    const all = differenceOf(CAREFUL, null, 3, 5);
    const alone = differenceOf(CAREFUL, 'vane', 3, 5);
    expect(alone.faults.vane).toEqual(all.faults.vane);
    expect([alone.mass, alone.faults.bend.sag, alone.tailLeftRate].map(Math.abs)).toEqual([0, 0, 0]);
  });

  it('has the standard deviations asked for, to 5 % over 4000 arrows', () => {
    const drawn = Array.from({ length: 4000 }, (_, i) => differenceOf(CAREFUL, null, 1, i));
    const rms = (of: (d: (typeof drawn)[number]) => number) =>
      Math.sqrt(drawn.reduce((sum, d) => sum + of(d) ** 2, 0) / drawn.length);
    const within = (value: number, sd: number) =>
      expect(Math.abs(value / sd - 1)).toBeLessThan(0.05 /* relative: four standard errors of 4000 arrows */);
    within(
      rms((d) => d.mass),
      CAREFUL.mass,
    );
    within(
      rms((d) => d.faults.bend.sag * Math.cos(d.faults.bend.at)),
      CAREFUL.bend,
    );
    within(
      rms((d) => d.faults.head.tilt * Math.sin(d.faults.head.at)),
      CAREFUL.head,
    );
    within(
      rms((d) => d.faults.vane.error),
      CAREFUL.vane,
    );
    within(
      rms((d) => d.tailLeftRate),
      CAREFUL.nockTravel,
    );
  });
});

describe('scatterByRange', () => {
  const none = new Float64Array(2 * 4000);
  const withAll = (all: Float64Array, speed = none): Hits => ({
    all,
    alone: { mass: none, balance: none, speed, bend: none, vane: none, head: none, nockTravel: none },
  });

  it('pairs of normal hits lie sqrt(pi) standard deviations apart on average, to 3 %', () => {
    const { normal } = randomStream(5, 0);
    const all = Float64Array.from({ length: 8000 }, normal);
    const [found] = scatterByRange(withAll(all, all), [si(50)], 2);
    expect(Math.abs((found?.group ?? 0) / Math.sqrt(Math.PI) - 1)).toBeLessThan(0.03 /* relative */);
    expect(Math.abs((found?.lateralSd ?? 0) - 1)).toBeLessThan(0.05 /* relative */);
    expect(found?.causes.find(({ cause }) => cause === 'speed')?.share).toBe(1);
    expect(Math.abs(found?.together ?? 1)).toBeLessThan(1e-12 /* of the variance, rounding */);
  });

  it('the largest distance of four corners of a square is its diagonal; hits are told apart by range', () => {
    // Two ranges: a unit square, and one place.
    const all = Float64Array.from([0, 0, 5, 5, 0, 1, 5, 5, 1, 0, 5, 5, 1, 1, 5, 5]);
    const [square, place] = scatterByRange(withAll(all, new Float64Array(16)), [si(10), si(20)], 4);
    expect(square?.group).toBe(Math.SQRT2);
    expect(place?.group).toBe(0);
    expect(place?.together).toBe(0);
    expect(square?.causes.map(({ cause }) => cause)).toEqual(CAUSES satisfies readonly Cause[]);
  });

  it('refuses groups of one, and fewer arrows than a group', () => {
    expect(() => scatterByRange(withAll(none), [si(10)], 1)).toThrow(/group/);
    expect(() => scatterByRange(withAll(none), [si(10)], 5000)).toThrow(/at least one group/);
  });
});
