import { describe, expect, it } from 'vitest';
import { arrowEnds } from '../../../../src/advice/launch/arrow-ends.ts';
import type { StartName } from '../../../../src/advice/launch/bad-starts.ts';
import { paperHoles } from '../../../../src/advice/launch/paper-hole.ts';
import { LEAST_MARGIN, type StartEffect, swingAdvice } from '../../../../src/advice/launch/swing.ts';
import type { Arrow } from '../../../../src/arrow/arrow.ts';
import { launchFromEye } from '../../../../src/flight/launch.ts';
import { CLEAN, rigidLaunch } from '../../../../src/flight/rigid-launch.ts';
import { type Metres, si } from '../../../../src/quantities/quantity.ts';
import { huntingArrow } from '../../flight/hunting-arrow.ts';
import { conditionsOf, pointArrow } from '../../flight/point-arrow.ts';

const YARD = 0.9144; // m
const DEGREE = Math.PI / 180;
const yards = (...ranges: number[]): Metres[] => ranges.map((range) => si(range * YARD));
const level = launchFromEye(si(85.344), si(0));

const ask = (arrow: Arrow, angle = DEGREE, rate = 1) =>
  swingAdvice({
    arrow,
    conditions: conditionsOf(arrow.flying),
    launch: level,
    angle: si(angle),
    rate: si(rate),
    ranges: yards(20, 60, 100),
    papers: yards(2, 3, 4),
  });
const start = (effects: readonly StartEffect[], name: StartName): StartEffect =>
  effects.find((effect) => effect.name === name) ?? expect.fail(`no ${name}`);

describe('swingAdvice', () => {
  const field = ask(huntingArrow());
  const bladed = ask(huntingArrow({ shape: 'fixed_blade' }));

  it('the clean start swings nothing, misses nothing and costs nothing', () => {
    const { largest, recovery, energyLost, misses } = start(field.starts, 'clean');
    expect([largest, recovery, energyLost]).toEqual([0, 0, 0]);
    expect(misses.flatMap(({ right, high }) => [right, high])).toEqual([0, 0, 0, 0, 0, 0]);
  });

  it('tail left sends the arrow right, tail high sends it low, nock travel left sends it right and most', () => {
    const last = (name: StartName) => start(field.starts, name).misses.at(-1) ?? expect.fail();
    expect(last('tail left').right).toBeGreaterThan(0);
    expect(last('tail high').high).toBeLessThan(0);
    expect(last('nock travel left').right).toBeGreaterThan(10 * last('tail left').right);
  });

  it('a small swing is down to a tenth after 2.3 damping lengths, and looked at every half wavelength', () => {
    const small = ask(huntingArrow(), 1e-4, 1e-3);
    const { dampingLength, wavelength } = small.swing ?? expect.fail();
    const recovery = start(small.starts, 'tail left').recovery ?? expect.fail('no recovery');
    expect(recovery).toBeGreaterThan(Math.log(10) * dampingLength - wavelength / 2);
    expect(recovery).toBeLessThan(Math.log(10) * dampingLength + wavelength / 8);
  });

  it('energy lost grows as the square of the start, and is under a thousandth of the arrow at 1 deg', () => {
    const one = start(field.starts, 'tail left').energyLost;
    const half = start(ask(huntingArrow(), DEGREE / 2).starts, 'tail left').energyLost;
    expect(one / half).toBeGreaterThan(3.7);
    // Cross-flow adds a cubic part.
    expect(one / half).toBeLessThan(5);
    expect(one).toBeLessThan(0.1 /* J of 106 */);
  });

  it('a fixed-blade head takes most of the margin and triples what a bad start costs', () => {
    expect(field.marginShare).toBeGreaterThan(0.4);
    expect(bladed.marginShare).toBeLessThan(0.2);
    const miss = (of: typeof field) => start(of.starts, 'nock travel left').misses.at(-1)?.right ?? 0;
    expect(miss(bladed) / miss(field)).toBeGreaterThan(2);
  });

  it('warns below the stated share of the length, and not above', () => {
    expect(field.tooSmall).toBe(false);
    expect(bladed.tooSmall).toBe(bladed.marginShare < LEAST_MARGIN);
    const short = huntingArrow({ shape: 'fixed_blade', count: 1 });
    expect(() => ask(short)).toThrow(/tumbles/);
  });

  it('refuses an arrow without parts', () => {
    const bare = { ...huntingArrow(), flying: pointArrow(0.03, 0.006, 2), parts: null, length: null };
    expect(() => ask(bare)).toThrow(/parts/);
  });
});

describe('paperHoles', () => {
  const arrow = huntingArrow();
  const ends = arrowEnds(arrow);
  const conditions = conditionsOf(arrow.flying);
  const holes = (disturbance = CLEAN, ranges = yards(2, 3, 4)) =>
    paperHoles(conditions, rigidLaunch(level, disturbance), ends, ranges);

  it('in a vacuum a shaft that does not turn tears its length times the lean, less the fall between the two holes', () => {
    const air = { ...conditions.air, density: si<'kg/m3'>(0) };
    const lean = 0.02;
    const [hole] = paperHoles(
      { ...conditions, air },
      rigidLaunch(level, { ...CLEAN, tailLeft: si(lean) }),
      ends,
      [si(3)],
    );
    const length = ends.ahead + ends.behind;
    expect(Math.abs((hole?.nockRight ?? 0) + length * Math.sin(lean))).toBeLessThan(1e-7 /* m */);
    const time = (x: number) => x / 85.344;
    const fall = (x: number) => 4.903325 * time(x) ** 2;
    const expected = fall(3 - ends.ahead * Math.cos(lean)) - fall(3 + ends.behind * Math.cos(lean));
    expect(Math.abs((hole?.nockHigh ?? 0) - expected)).toBeLessThan(1e-7 /* m */);
  });

  it('a tail-left start tears nock left, and less at four yards than at two', () => {
    const tears = holes({ ...CLEAN, tailLeft: si(DEGREE) });
    expect(tears.every(({ nockRight }) => nockRight < 0)).toBe(true);
    expect(tears[2]?.length ?? 1).toBeLessThan(tears[0]?.length ?? 0);
    // A quarter turn anticlockwise from up is nock left.
    expect(Math.abs((tears[0]?.clockwise ?? 0) + Math.PI / 2)).toBeLessThan(
      0.25 /* rad: the path drops meanwhile, which turns it a little */,
    );
  });

  it('tail high tears up, which is clockwise 0', () => {
    const [tear] = holes({ ...CLEAN, tailUp: si(2 * DEGREE) });
    expect(tear?.nockHigh ?? 0).toBeGreaterThan(0);
    expect(Math.abs(tear?.clockwise ?? 1)).toBeLessThan(0.01 /* rad */);
  });

  it('a clean start still tears a little nock low: the path falls while the shaft goes through', () => {
    for (const { nockHigh, nockRight } of holes()) {
      expect(nockHigh).toBeLessThan(0);
      expect(nockHigh).toBeGreaterThan(-0.005);
      expect(Math.abs(nockRight)).toBeLessThan(1e-5 /* m: 0.01 mm, nothing pushes it aside */);
    }
  });

  it('refuses a sheet the point is through before the arrow is free', () => {
    expect(() => holes(CLEAN, [si(0.2)])).toThrow(/range of the paper/);
  });
});
