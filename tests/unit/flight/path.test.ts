import { describe, expect, it } from 'vitest';
import { launchFromEye } from '../../../src/flight/launch.ts';
import { blendedPath, flyPath } from '../../../src/flight/path.ts';
import { flyer } from '../../../src/flight/trajectory.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from './hunting-arrow.ts';
import { conditionsOf, spinningArrow } from './point-arrow.ts';

const windy = (arrow: typeof spinningArrow) => {
  const { wind, ...rest } = conditionsOf(arrow);
  return { ...rest, wind: { ...wind, across: si<'m/s'>(4), tail: si<'m/s'>(-1) } };
};
const launch = { ...launchFromEye(si(80), si(0.03)), position: [0.9, -0.1, 0.01] as const };
const places = [3, 7.3, 12, 25.5, 31, 47, 54.9];

describe.each([
  ['in still air', flyer(conditionsOf(spinningArrow))],
  ['in a wind, with the entry into it', flyer(windy(huntingArrow().flying))],
])('a path %s', (_, flight) => {
  const flown = flight.entered(launch, places);

  it.each([
    ['from the launch', undefined],
    ['from a range beyond it', 2.5],
  ])('%s is read where a flight to each range comes', (__, start) => {
    const path = flyPath(flight, launch, 55, start);
    expect([path.start, path.end]).toEqual([start ?? 0.9, 55]);
    for (const [i, place] of places.entries()) {
      const [height, lateral] = at(flown, i);
      expect(Math.abs(path.height(place) - height)).toBeLessThan(1e-7 /* m */);
      expect(Math.abs(path.lateral(place) - lateral)).toBeLessThan(1e-6 /* m: as its spacing promises */);
    }
  });

  it('is flown from station to station at most 10 m apart: six from 0.9 to 55 m, and the launch', () =>
    expect(flyPath(flight, launch, 55).samples.height).toHaveLength(3 * 7));

  it('blended of two is their shares of both, anywhere', () => {
    const higher = { ...launchFromEye(si(80), si(0.04)), position: launch.position };
    const [low, high] = [flyPath(flight, launch, 55), flyPath(flight, higher, 55)];
    const blend = blendedPath([low, high], [0.75, 0.25]);
    expect([blend.start, blend.end]).toEqual([0.9, 55]);
    for (const place of places) {
      expect(blend.height(place)).toBeCloseTo(0.75 * low.height(place) + 0.25 * high.height(place), 13);
      expect(blend.lateral(place)).toBeCloseTo(0.75 * low.lateral(place) + 0.25 * high.lateral(place), 13);
    }
  });
});

it('the entry into a wind makes a difference that the above would see', () => {
  const flight = flyer(windy(huntingArrow().flying));
  const [entered, steady] = [flight.entered(launch, [50]), flight.states(launch, [50])];
  expect(Math.abs(at(entered, 0)[1] - at(steady, 0)[1])).toBeGreaterThan(1e-3 /* m */);
});

it('nothing cannot be blended', () => expect(() => blendedPath([], [])).toThrow(RangeError));
