import { describe, expect, it } from 'vitest';
import { airChanges, otherAirs } from '../../../../src/advice/range/air-change.ts';
import { CLOCK, windEffects } from '../../../../src/advice/range/wind-drift.ts';
import { windFrom } from '../../../../src/atmosphere/wind.ts';
import { STATE } from '../../../../src/flight/frame.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { launchThrough } from '../../../../src/sight/geometry.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { sightIn } from '../../../../src/sight/sighted.ts';
import { seaLevel } from '../../flight/point-arrow.ts';
import { inventedRig, yards } from '../../sight/invented-rig.ts';
import { courseRanges, inches, mirrored, spinningRig } from '../invented-bow.ts';

const tenMph = si<'m/s'>(4.4704);
const effects = windEffects(inventedRig, tenMph, CLOCK, courseRanges);
const at = (hour: number, range = courseRanges.length - 1) =>
  effects[hour % 12]?.rows[range] ?? expect.fail('no row');

describe('windEffects', () => {
  it('from 3 o clock drifts left and from 9 o clock right, by the lag rule to 0.5 %', () => {
    const { pins, flight } = sightIn(inventedRig, courseRanges);
    for (const [i, range] of courseRanges.entries()) {
      const launch = launchThrough(
        inventedRig.geometry,
        pins[i] ?? expect.fail(),
        si(0),
        inventedRig.launchSpeed,
      );
      const [state] = flight.states(launch, [range]);
      const time = state?.[STATE.time] ?? Number.NaN;
      const lag = tenMph * (time - (range - launch.position[0]) / launch.velocity[0]);
      // The wind adds to the airspeed: (W/v)^2/2 = 0.1 %.
      expect(Math.abs(at(3, i).lateral / -lag - 1)).toBeLessThan(0.005 /* relative */);
      expect(Math.abs(at(9, i).lateral / lag - 1)).toBeLessThan(0.005 /* relative */);
    }
  });

  it('is 14.5 in at 100 yd for 10 mph (independent figure of the lag rule), to 2 %', () =>
    expect(Math.abs(at(9).lateral / inches(14.5) - 1)).toBeLessThan(
      0.02 /* relative: its arrow started at the eye */,
    ));

  it('from ahead is low and asks for a longer mark, from behind high and a shorter', () => {
    expect(at(0).vertical).toBeLessThan(0);
    expect(at(0).markChange).toBeGreaterThan(0);
    expect(at(6).vertical).toBeGreaterThan(0);
    expect(at(6).markChange).toBeLessThan(0);
    expect(Math.abs(at(0).lateral)).toBeLessThan(1e-9 /* m */);
  });

  it('the longer mark does hit in that wind', () => {
    const ahead = {
      ...inventedRig,
      conditions: { ...inventedRig.conditions, wind: windFrom(tenMph, si(0)) },
    };
    for (const [i, range] of courseRanges.entries()) {
      const { zero } = marksFor(inventedRig, [range]);
      const change = at(0, i).markChange ?? 0;
      const [changed] = marksFor(inventedRig, [range + change]).marks;
      const pin = { down: zero.down + (changed?.travel ?? 0), windage: zero.windage };
      const { flight } = sightIn(ahead, [range]);
      const [state] = flight.states(launchThrough(ahead.geometry, pin, si(0), ahead.launchSpeed), [range]);
      expect(Math.abs(state?.[STATE.height] ?? 1)).toBeLessThan(1e-6 /* m */);
    }
  });

  it('a mirrored bow in a mirrored wind drifts mirrored, exactly', () => {
    const [ours] = windEffects(spinningRig, tenMph, [si(1)], courseRanges);
    const [theirs] = windEffects(mirrored(spinningRig), tenMph, [si(-1)], courseRanges);
    for (const [i, { lateral, vertical, markChange }] of (ours?.rows ?? []).entries()) {
      expect(theirs?.rows[i]?.lateral).toBe(-lateral);
      expect(theirs?.rows[i]?.vertical).toBe(vertical);
      expect(theirs?.rows[i]?.markChange).toBe(markChange);
    }
  });
});

const ELSEWHERE = {
  altitudes: [si<'m'>(0), si<'m'>(1000), si<'m'>(3000)],
  temperatures: [si<'K'>(258.15), si<'K'>(303.15)],
};

describe('airChanges', () => {
  const changes = airChanges(inventedRig, otherAirs(seaLevel, ELSEWHERE), courseRanges, 8.33e-4);

  it('in the air of its own altitude the tape holds to nothing', () => {
    const own = changes.find(({ other }) => other.kind === 'altitude' && other.altitude === 0);
    expect(own?.holds).toBe(true);
    for (const { vertical } of own?.rows ?? []) expect(Math.abs(vertical)).toBeLessThan(1e-4 /* m */);
  });

  it('higher up, and in heat, the arrow hits high and the marks shrink; in frost low', () => {
    for (const { other, rows } of changes) {
      const { vertical, travelChange } = rows.at(-1) ?? expect.fail();
      const thinner = Math.sign(seaLevel.density - other.air.density);
      if (Math.abs(seaLevel.density - other.air.density) < 0.001) continue;
      expect(Math.sign(vertical)).toBe(thinner);
      expect(Math.sign(travelChange)).toBe(-thinner);
    }
  });

  it('density altitude is the altitude in the standard atmosphere', () => {
    for (const { other, densityAltitude } of changes)
      if (other.kind === 'altitude')
        expect(Math.abs(densityAltitude - other.altitude)).toBeLessThan(0.1 /* m */);
  });

  it('without drag no air changes a tape', () => {
    const { conditions } = inventedRig;
    const dragless = {
      ...inventedRig,
      conditions: { ...conditions, arrow: { ...conditions.arrow, dragScale: 0 } },
    };
    for (const { worst } of airChanges(dragless, otherAirs(seaLevel, ELSEWHERE), courseRanges, 8.33e-4))
      expect(Math.abs(worst.vertical)).toBeLessThan(1e-9 /* m */);
  });

  it('says that a tape does not hold for an archer who would see it', () => {
    const high = changes.find(({ other }) => other.kind === 'altitude' && other.altitude === 3000);
    const steady = airChanges(inventedRig, high === undefined ? [] : [high.other], courseRanges, 8.33e-5);
    expect(steady[0]?.holds).toBe(false);
    expect(steady[0]?.worst.range).toBe(yards(100));
  });
});
