import { describe, expect, it } from 'vitest';
import type { StartName } from '../../../../src/advice/launch/bad-starts.ts';
import { broadheadAnswers, broadheadMisses, type Shot } from '../../../../src/advice/launch/broadhead.ts';
import type { Arrow } from '../../../../src/arrow/arrow.ts';
import { buildArrow } from '../../../../src/arrow/build.ts';
import { launchFromEye } from '../../../../src/flight/launch.ts';
import { fly } from '../../../../src/flight/trajectory.ts';
import { type Metres, si } from '../../../../src/quantities/quantity.ts';
import { huntingArrow } from '../../flight/hunting-arrow.ts';
import { conditionsOf } from '../../flight/point-arrow.ts';

const YARD = 0.9144; // m
const ranges: Metres[] = [20, 60, 100].map((range) => si(range * YARD));
const launch = launchFromEye(si(85.344), si(0.03));
const shot = ({ flying }: Arrow): Shot => ({ conditions: conditionsOf(flying), launch });
const start = { angle: si<'rad'>(Math.PI / 180), rate: si<'rad/s'>(1) };
const field = shot(huntingArrow());
const bladed = shot(huntingArrow({ shape: 'fixed_blade' }));
const misses = broadheadMisses(field, bladed, start, ranges);
const of = (name: StartName) => misses.find((one) => one.name === name)?.misses ?? expect.fail(`no ${name}`);

it('an arrow against itself never misses', () => {
  for (const { misses: own } of broadheadMisses(field, field, start, ranges))
    expect(own.flatMap(({ right, high }) => [Math.abs(right), Math.abs(high)])).toEqual([0, 0, 0, 0, 0, 0]);
});

// Its short static margin keeps it nose up.
it('a broadhead of equal drag flies high out of a clean start, by the steady lift of the everyday model, to 30 %', () => {
  const [, , far] = of('clean');
  const steady = ({ conditions }: Shot) => fly(conditions, launch, [100 * YARD])[0]?.height ?? Number.NaN;
  const expected = steady(bladed) - steady(field);
  expect(expected).toBeGreaterThan(0.1 /* m, of 6 m of drop */);
  // The rest is the swing of an arrow that leaves without turning, three times larger with blades.
  expect(Math.abs((far?.high ?? 0) / expected - 1)).toBeLessThan(0.3 /* of the rise */);
  expect(Math.abs(far?.right ?? 1)).toBeLessThan(0.01 /* m */);
});

it('out of nock travel the broadhead goes the way of the field point, only further, and the more the longer the range', () => {
  const [near, middle, far] = of('nock travel left').map(({ right }) => right);
  expect(near ?? 0).toBeGreaterThan(0);
  expect(middle ?? 0).toBeGreaterThan(near ?? 1);
  expect(far ?? 0).toBeGreaterThan(middle ?? 1);
});

it('a tail left sends it right, a tail high low of the field point', () => {
  expect(of('tail left').at(-1)?.right ?? 0).toBeGreaterThan(0);
  const clean = of('clean').at(-1)?.high ?? 0;
  expect(of('tail high').at(-1)?.high ?? 1).toBeLessThan(clean);
});

describe('with errors and standing blades', () => {
  const counted = { choices: { liftLossesCounted: true } };
  const shaped = (arrow: Arrow, shapeDragSd: number) => ({ ...shot(arrow), shapeDragSd });
  const usual = shaped(huntingArrow({ shape: 'fixed_blade', ...counted }), 0.1);
  const plain = shaped(huntingArrow(counted), 0);
  const answers = broadheadAnswers(plain, usual, start, ranges);

  it('tells the misses of the arrows as counted', () => {
    const told = broadheadMisses(plain, usual, start, ranges);
    for (const [k, { misses: own }] of answers.entries())
      for (const [i, { right, high }] of own.entries())
        expect([right, high]).toEqual([told[k]?.misses[i]?.right, told[k]?.misses[i]?.high]);
  });

  it('half a foot a second of nock travel either way moves it from low to high at 60 yd, as the audit has it', () => {
    // By the audit's six degrees of freedom ± 0.5 ft/s move a usual head by 3.1 in either way at 60 yd, so 0.25 by 1.6; with
    // laws of lift beside it.
    const sd = (answers[0]?.misses[1]?.highSd ?? Number.NaN) / 0.0254;
    expect(sd).toBeGreaterThan(1.3 /* in */);
    expect(sd).toBeLessThan(5 /* in */);
  });

  it('errors grow with range, and three blades have no stand', () => {
    const [clean] = answers;
    const sds = (clean?.misses ?? []).map(({ highSd }) => highSd);
    expect(sds).toEqual(sds.toSorted((a, b) => a - b));
    expect(clean?.misses.every(({ stands }) => stands.length === 0)).toBe(true);
  });

  it('two blades are told as they stand: upright a tail left sends them further right than flat', () => {
    const { parts } = huntingArrow({ shape: 'fixed_blade' });
    if (parts === null) throw new Error('an arrow from parts');
    const blades = {
      count: 2,
      length: si<'m'>(0.028),
      cuttingDiameter: si<'m'>(0.0286),
      thickness: si<'m'>(8e-4),
    };
    const two = buildArrow({
      parts: { ...parts, point: { ...parts.point, blades } },
      totals: { dragCoefficient: 2.5 },
    });
    const tail = broadheadAnswers(plain, shaped(two, 0), start, ranges).find(
      ({ name }) => name === 'tail left',
    );
    const far = tail?.misses.at(-1) ?? expect.fail('no misses');
    const by = (stand: string) => far.stands.find((one) => one.stand === stand)?.right ?? Number.NaN;
    expect(far.stands.map(({ stand }) => stand)).toEqual([
      'upright',
      'flat',
      'leaning right',
      'leaning left',
    ]);
    expect(by('upright')).toBeGreaterThan(by('flat'));
  });
});
