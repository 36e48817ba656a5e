import { describe, expect, it } from 'vitest';
import { flyer } from '../../../src/flight/trajectory.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { NO_PIN } from '../../../src/sight/no-pin.ts';
import { pathsOver } from '../../../src/sight/pin-paths.ts';
import { sightIn } from '../../../src/sight/sighted.ts';
import { impact } from '../../../src/sight/zero.ts';
import { conditionsOf, spinningArrow } from '../flight/point-arrow.ts';
import { inventedRig, yards } from './invented-rig.ts';

const rig = { ...inventedRig, conditions: conditionsOf(spinningArrow) };
/** Made anew in each test: what fails here fails there. */
const solved = () => ({ ...marksFor(rig, [20, 40, 60, 90].map(yards)), flight: flyer(rig.conditions) });

it.each([25, 55, 85])(
  'a pin between those solved for goes where a flight of its own goes, at %i yd',
  (label) => {
    const { paths, shared, zero, flight } = solved();
    const range = yards(label);
    const down = (shared.span.lo + shared.span.hi) / 2;
    const own = impact(flight, rig, { down, windage: zero.windage }, range);
    expect(Math.abs(paths.height(down, range) - own.height)).toBeLessThan(1e-7 /* m: as promised */);
    expect(Math.abs(paths.lateral(down, range) - own.lateral)).toBeLessThan(1e-7 /* m */);
    expect(Math.abs(paths.path(down).height(range) - own.height)).toBeLessThan(1e-7 /* m */);
    expect(Math.abs(paths.path(down).lateral(range) - own.lateral)).toBeLessThan(1e-7 /* m */);
  },
);

describe('near the farthest range that any pin hits', () => {
  /** How the path of the zero at 20 m falls says little of pins that point the bow high. */
  const shooting = (speed: number) => ({
    ...inventedRig,
    launchSpeed: si<'m/s'>(speed),
    zeroRange: si<'m'>(20),
  });
  const hits = (far: ReturnType<typeof shooting>, ranges: readonly number[]): readonly number[] => {
    const { pins, zero, flight } = sightIn(far, ranges);
    return pins.map(
      ({ down }, i) => impact(flight, far, { down, windage: zero.windage }, at(ranges, i)).height,
    );
  };

  it.each([
    [25, [59.75]],
    [25, [60.25]],
    [25, [10, 60.25]],
    [85.344, [408.5]],
    [85.344, [409.25]],
    [85.344, [20, 100, 300, 409.25]],
  ])('finds the pins of a bow of %f m/s for %j m, by themselves and together', (speed, ranges) => {
    for (const height of hits(shooting(speed), ranges))
      expect(Math.abs(height)).toBeLessThan(0.005 /* m: five flights stand for pins from 1 to 40 degrees */);
  });

  it('takes no pin for one that hits which its own flight does not bear out', () =>
    // A flight of its own from the pin that shared paths gave for this range once came down 228 m too low.
    expect(() => sightIn(shooting(85.344), [461.5])).toThrow(expect.objectContaining({ reason: NO_PIN })));
});

it('the hit moves with the pin as between two flights a millimetre apart', () => {
  const { paths, shared, zero, flight } = solved();
  const [down, range] = [(shared.span.lo + shared.span.hi) / 2, yards(60)];
  const height = (more: number) =>
    impact(flight, rig, { down: down + more, windage: zero.windage }, range).height;
  const perTravel = (height(5e-4) - height(-5e-4)) / 1e-3;
  expect(Math.abs(paths.heightPerTravel(down, range) / perTravel - 1)).toBeLessThan(1e-6 /* relative */);
});

it('the same pins and ranges flown anew on three flights give nearly the same paths: for differences between rigs', () => {
  const { paths, shared } = solved();
  const fewer = pathsOver(rig, shared, 3);
  for (const label of [20, 50, 90]) {
    const down = shared.span.lo + 0.3 * (shared.span.hi - shared.span.lo);
    expect(Math.abs(fewer.height(down, yards(label)) - paths.height(down, yards(label)))).toBeLessThan(
      1e-4 /* m */,
    );
  }
});

it('spans the pins of all its ranges, with a fiftieth to spare on both sides, and ends at the farthest', () => {
  const { shared, zero } = solved();
  const pins = [20, 40, 60, 90].map(
    (label) => zero.down + (marksFor(rig, [yards(label)]).marks[0]?.travel ?? Number.NaN),
  );
  expect(shared.end).toBe(yards(90));
  expect(shared.windage).toBe(zero.windage);
  const spread = Math.max(...pins) - Math.min(...pins);
  for (const spare of [Math.min(...pins) - shared.span.lo, shared.span.hi - Math.max(...pins)])
    expect(Math.abs(spare - (0.02 * spread + 2e-4))).toBeLessThan(
      0.02 * spread /* m: spanned from a first estimate */,
    );
});
