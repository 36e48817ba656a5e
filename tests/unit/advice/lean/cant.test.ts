import { describe, expect, it } from 'vitest';
import { cantEffects, levelErrors } from '../../../../src/advice/lean/cant.ts';
import { windFrom } from '../../../../src/atmosphere/wind.ts';
import { launchLineHeight } from '../../../../src/flight/launch.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { launchThrough } from '../../../../src/sight/geometry.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { dragless, inventedRig, yards } from '../../sight/invented-rig.ts';
import { courseRanges, degrees, mirrored, spinningRig } from '../invented-bow.ts';

const fiveDegrees = [-5, -2, 0, 2, 5].map(degrees);

describe('cantEffects', () => {
  const effects = cantEffects(spinningRig, fiveDegrees, courseRanges);
  const [left, , none, , right] = effects;

  it('no cant costs nothing', () => {
    for (const { lateral, vertical } of [...(none?.rows ?? []), ...(none?.rezeroed ?? [])]) {
      expect(Math.abs(lateral)).toBeLessThan(1e-12 /* m: the pin is put together again, to a rounding */);
      expect(Math.abs(vertical)).toBeLessThan(1e-12 /* m */);
    }
  });

  it('a bow turned clockwise misses right and low, further at longer range', () => {
    const rows = right?.rows ?? expect.fail();
    for (const [i, { lateral, vertical }] of rows.entries()) {
      expect(lateral).toBeGreaterThan(rows[i - 1]?.lateral ?? 0);
      expect(vertical).toBeLessThan(rows[i - 1]?.vertical ?? 0);
    }
  });

  it('turned the other way it misses as far left and as low, but for the spin', () => {
    for (const [i, row] of (right?.rows ?? []).entries()) {
      const other = left?.rows[i];
      // A spin of 0.03 in at 100 yd turns with nothing here; the rest is its product with 5 deg.
      expect(Math.abs(row.lateral + (other?.lateral ?? 0))).toBeLessThan(1e-5 /* m */);
      expect(Math.abs(row.vertical - (other?.vertical ?? 0))).toBeLessThan(1e-4 /* m */);
    }
  });

  it('without drag or spin it is exactly the turned parabola: h sin c to the side, h (1 - cos c) low', () => {
    // Turning about the line of sight leaves the forward speed alone, so the time to a range stays, and with it the fall.
    const { marks, zero } = marksFor(dragless, courseRanges);
    const [effect] = cantEffects(dragless, [degrees(7)], courseRanges);
    for (const [i, { travel, range }] of marks.entries()) {
      const launch = launchThrough(
        dragless.geometry,
        { down: zero.down + travel, windage: 0 },
        si(0),
        dragless.launchSpeed,
      );
      const rise = launchLineHeight(launch, range);
      const row = effect?.rows[i];
      expect(Math.abs((row?.lateral ?? 0) - rise * Math.sin(degrees(7)))).toBeLessThan(1e-8 /* m */);
      expect(Math.abs((row?.vertical ?? 0) + rise * (1 - Math.cos(degrees(7))))).toBeLessThan(1e-8 /* m */);
    }
  });

  it('set again at the zero range it hits there, and still misses beyond by the curved part', () => {
    const rows = right?.rezeroed ?? expect.fail();
    expect(Math.abs(rows[0]?.lateral ?? 1)).toBeLessThan(1e-6 /* m */);
    expect(Math.abs(rows[0]?.vertical ?? 1)).toBeLessThan(1e-6 /* m */);
    expect(rows.at(-1)?.lateral).toBeGreaterThan(0.3);
    expect(rows.at(-1)?.lateral).toBeLessThan(right?.rows.at(-1)?.lateral ?? 0);
  });

  it('a wind is not counted as a cost of the cant', () => {
    const windy = {
      ...inventedRig,
      conditions: { ...inventedRig.conditions, wind: windFrom(si(5), si(Math.PI / 2)) },
    };
    const [calmly] = cantEffects(inventedRig, [degrees(2)], [yards(60)]);
    const [windily] = cantEffects(windy, [degrees(2)], [yards(60)]);
    const ratio = (windily?.rows[0]?.lateral ?? 0) / (calmly?.rows[0]?.lateral ?? 1);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.01 /* relative: the pin is a little to the side */);
  });

  it('a mirrored bow gives mirrored costs exactly', () => {
    const windy = {
      ...spinningRig,
      cant: si<'rad'>(0.03),
      conditions: { ...spinningRig.conditions, wind: windFrom(si(4), si(1)) },
    };
    const ours = cantEffects(windy, [degrees(3)], courseRanges);
    const theirs = cantEffects(mirrored(windy), [-degrees(3)], courseRanges);
    for (const of of ['rows', 'rezeroed'] as const)
      for (const [i, row] of (ours[0]?.[of] ?? []).entries()) {
        expect(theirs[0]?.[of][i]?.lateral).toBe(-row.lateral);
        expect(theirs[0]?.[of][i]?.vertical).toBe(row.vertical);
      }
  });
});

it('levelErrors is the slope of the cost: a degree off costs what a cant of a degree does, to 0.1 %', () => {
  const [effect] = cantEffects(inventedRig, [degrees(1)], courseRanges);
  for (const [i, error] of levelErrors(inventedRig, courseRanges).entries()) {
    const cost = effect?.rows[i]?.lateral ?? 0;
    expect(Math.abs((error.lateralPerRadian * degrees(1)) / cost - 1)).toBeLessThan(1e-3 /* relative */);
  }
  expect(Math.abs(levelErrors(inventedRig, [yards(20)])[0]?.rezeroedPerRadian ?? 1)).toBeLessThan(
    1e-4 /* m/rad: nothing is left at the range of the zero */,
  );
});
