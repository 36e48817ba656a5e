import { describe, expect, it } from 'vitest';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { neighbourStrips, tapeLength, tapeOf, tapePlaces } from '../../../src/sight/tape.ts';
import { draglessElevation } from './dragless-elevation.ts';
import { dragless, inventedRig, yards } from './invented-rig.ts';

const labelled = (labels: readonly number[]) =>
  labels.map((label) => ({ range: si<'m'>(yards(label)), label }));
const fromTo = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** By hand, without drag: the pin stands E tan(elevation) below the eye's parallel to the arrow. E is 0.8382 m. */
const pin = (range: number): number => 0.8382 * Math.tan(draglessElevation(range));

describe('tapeOf', () => {
  it.each([1, 2])('stands each range at the travel of the pin from the zero, times the ratio %d', (ratio) => {
    const { ticks, endsBefore, beyond } = tapeOf(dragless, labelled(fromTo(20, 60)), ratio);
    expect(ticks.map(({ label }) => label)).toEqual(fromTo(20, 60));
    expect([endsBefore, beyond]).toEqual([null, null]);
    for (const { range, along } of ticks)
      expect(Math.abs(along - ratio * (pin(range) - pin(yards(20))))).toBeLessThan(
        2e-8 /* m: a thousandth of what a tape can show */,
      );
  });

  it('puts a range on the near branch where, by hand, the pin goes up for a longer range', () => {
    const { ticks } = tapeOf(dragless, labelled(fromTo(3, 40)), 1);
    const byHand = ticks.map(({ range }) => (pin(range + 1e-3) < pin(range - 1e-3) ? 'near' : 'far'));
    expect(byHand).toContain('near');
    expect(byHand).toContain('far');
    expect(ticks.map(({ branch }) => branch)).toEqual(byHand);
  });

  it('ends before the first range whose pin is lower than vanes and housing leave room for', () => {
    const rig: Rig = { ...dragless, housingBelowPin: si(0.05) };
    // Peep height less vane radius (half the shaft and 0.5 in) less housing: 0.11684 - 0.0158242 - 0.05 = 0.0510158 m.
    const first = fromTo(20, 150).find((label) => pin(yards(label)) > 0.0510158);
    const { ticks, endsBefore } = tapeOf(rig, labelled(fromTo(20, 150)), 1);
    expect(first).toBeGreaterThan(60);
    expect(endsBefore).toBe(yards(first ?? Number.NaN));
    expect(ticks.at(-1)?.label).toBe((first ?? Number.NaN) - 1);
  });

  it('leaves out near ranges that touch, and goes on where there is room again', () => {
    const rig: Rig = { ...dragless, housingBelowPin: si(0.05) };
    const free = fromTo(2, 40).filter((label) => pin(yards(label)) <= 0.0510158);
    expect(at(free, 0)).toBeGreaterThan(2);
    const { ticks, endsBefore } = tapeOf(rig, labelled(fromTo(2, 40)), 1);
    expect(ticks.map(({ label }) => label)).toEqual(free);
    expect(endsBefore).toBeNull();
  });

  it('ends where shared paths end, of ranges at every yard to far beyond what the arrow carries', () => {
    const open: Rig = { ...inventedRig, housingBelowPin: si(-10) };
    const { ticks, beyond } = tapeOf(open, labelled(fromTo(20, 700)), 1);
    const last = at(ticks, ticks.length - 1);
    // Without drag this arrow carries 85.7^2/9.81 m, 820 yd; half of that is left to any arrow.
    expect(last.label).toBeGreaterThan(410);
    expect(last.label).toBeLessThan(700);
    expect(beyond).toBe(yards(last.label + 1));
  });

  it('names the first range that no shot reaches', () => {
    // A sight that stands clear of the arrow at any elevation.
    const slow: Rig = { ...dragless, launchSpeed: si(20), zeroRange: si(10), housingBelowPin: si(-2) };
    const { ticks, beyond } = tapeOf(slow, labelled(fromTo(11, 60)), 1);
    // By hand at 45 deg, v = 20 m/s: free flight begins (0.98 + 0.11684)/sqrt 2 = 0.776 m ahead of the eye and
    // (0.98 - 0.11684)/sqrt 2 = 0.610 m above it, and from there it is v^2/g sqrt(1 + 2 g 0.610/v^2) = 41.39 m to the
    // height of the eye: 42.17 m in all, which lies between 46 yd (42.06 m) and 47 yd (42.98 m).
    expect(beyond).toBe(yards(47));
    expect(ticks.at(-1)?.label).toBe(46);
  });
});

it('places of single ranges are those of the tape', () => {
  const { ticks } = tapeOf(inventedRig, labelled([20, 45, 60]), 1.5);
  const places = tapePlaces(inventedRig, [60, 20].map(yards), 1.5);
  for (const [i, label] of [60, 20].entries()) {
    const tick = ticks.find((other) => other.label === label);
    const place = at(places, i);
    expect(place.branch).toBe(tick?.branch);
    expect(Math.abs(place.along - (tick?.along ?? Number.NaN))).toBeLessThan(
      1e-7 /* m: other ranges share other flights */,
    );
  }
});

it('strips run from the slowest to the fastest, and the slower the arrow the farther its marks lie apart', () => {
  const strips = neighbourStrips(inventedRig, labelled([20, 60]), 1, { count: 2, step: 3 });
  expect(strips.map(({ faster }) => faster)).toEqual([-6, -3, 3, 6]);
  const lengths = strips.map(({ tape }) => tapeLength(tape.ticks) as number);
  expect(lengths).toEqual(lengths.toSorted((a, b) => b - a));
  expect(new Set(lengths).size).toBe(4);
});

it.each([false, true])('every strip has the places of a tape of its own, in wind: %s', (windy) => {
  const conditions = {
    ...inventedRig.conditions,
    wind: {
      ...inventedRig.conditions.wind,
      across: si<'m/s'>(windy ? 8 : 0),
      tail: si<'m/s'>(windy ? -4 : 0),
    },
  };
  const rig: Rig = { ...inventedRig, conditions };
  const ranges = labelled(fromTo(20, 100));
  for (const { faster, tape } of neighbourStrips(rig, ranges, 1, { count: 2, step: 6 })) {
    const own = tapeOf({ ...rig, launchSpeed: si(rig.launchSpeed + faster) }, ranges, 1);
    expect(tape.ticks.map(({ label, branch }) => ({ label, branch }))).toEqual(
      own.ticks.map(({ label, branch }) => ({ label, branch })),
    );
    for (const [i, { along }] of tape.ticks.entries())
      expect(Math.abs(along - at(own.ticks, i).along)).toBeLessThan(
        2e-8 /* m: a thousandth of what a tape can show */,
      );
  }
});

it('a tape that turns back is as long as from its highest mark to its lowest', () => {
  const { ticks } = tapeOf(dragless, labelled(fromTo(10, 40)), 1);
  const pins = fromTo(10, 40).map((label) => pin(yards(label)));
  expect(Math.abs(tapeLength(ticks) - (Math.max(...pins) - Math.min(...pins)))).toBeLessThan(2e-8 /* m */);
  expect(tapeLength([])).toBe(0);
});

describe('a slider with an end', () => {
  const ranges = labelled(fromTo(10, 80));
  const down = (label: number) => pin(yards(label)) - pin(yards(20));
  const slider = (length: number | null, aboveZero: number | null) => ({
    length: length === null ? null : si<'m'>(length),
    aboveZero: aboveZero === null ? null : si<'m'>(aboveZero),
  });

  it('ends the tape before the first range that it does not go low enough for', () => {
    // By hand: 3 mm stay above the zero's place, so of 20 mm there are 17 mm below it.
    const first = fromTo(20, 80).find((label) => down(label) > 0.017);
    const { ticks, sliderEndsBefore, sliderTooLow } = tapeOf(dragless, ranges, 1, slider(0.02, 0.003));
    expect(first).toBeGreaterThan(30);
    expect(sliderEndsBefore).toBe(yards(first ?? Number.NaN));
    expect(ticks.at(-1)?.label).toBe((first ?? Number.NaN) - 1);
    expect(sliderTooLow).toBe(false);
  });

  it('leaves out near ranges that it does not go high enough for', () => {
    const { ticks, sliderTooLow } = tapeOf(dragless, ranges, 1, slider(null, 1e-4));
    const byHand = fromTo(10, 80).filter((label) => down(label) >= -1e-4 - 1e-5);
    expect(byHand).not.toContain(15);
    expect(ticks.map(({ label }) => label)).toEqual(byHand);
    expect(sliderTooLow).toBe(true);
  });

  it('counts its length from the highest of the marks where nobody has said how high it goes', () => {
    const highest = Math.min(...fromTo(10, 80).map(down));
    const { ticks, sliderEndsBefore } = tapeOf(dragless, ranges, 1, slider(0.02, null));
    const byHand = fromTo(10, 80).filter((label) => down(label) <= highest + 0.02 + 1e-5);
    expect(ticks.map(({ label }) => label)).toEqual(byHand);
    expect(sliderEndsBefore).toBe(yards(Math.max(...byHand) + 1));
  });

  it('is never the reason when the arrow would touch the sight first', () => {
    const rig: Rig = { ...dragless, housingBelowPin: si(0.06) };
    const { endsBefore, sliderEndsBefore } = tapeOf(rig, ranges, 1, slider(0.05, null));
    expect(endsBefore).not.toBeNull();
    expect(sliderEndsBefore).toBeNull();
  });

  /**
   * By hand: the housing that touches half way between two ranges, above an arrow of radius 0.0031242 m with vanes of 12.7 mm.
   */
  const touchingAt = (label: number): Rig => ({
    ...dragless,
    housingBelowPin: si(0.11684 - 0.0158242 - pin(yards(label - 0.5))),
  });
  const highest = Math.min(...fromTo(10, 80).map(down));
  const endingAt = (label: number) => slider(down(label - 0.5) - highest, null);

  it.each([
    { touch: 50, end: 70, slid: null },
    { touch: 70, end: 50, slid: yards(50) },
  ])(
    'touching from $touch yd and ending before $end yd, the nearer of both is the reason',
    ({ touch, end, slid }) => {
      const { ticks, endsBefore, sliderEndsBefore } = tapeOf(touchingAt(touch), ranges, 1, endingAt(end));
      expect(endsBefore).toBe(yards(touch));
      expect(sliderEndsBefore).toBe(slid);
      expect(ticks.at(-1)?.label).toBe(49);
    },
  );

  it('shows the range at which it stands at its very top, and at its very bottom, to a hundredth of a millimetre', () => {
    const top = tapeOf(dragless, ranges, 1, slider(null, -down(18) - 5e-6));
    expect(top.ticks.map(({ label }) => label)).toContain(18);
    const bottom = tapeOf(dragless, ranges, 1, slider(down(60) - highest - 5e-6, null));
    expect(bottom.ticks.at(-1)?.label).toBe(60);
  });
});
