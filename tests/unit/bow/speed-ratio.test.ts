import { describe, expect, it } from 'vitest';
import { energyRatio, speedRatio } from '../../../src/bow/speed-ratio.ts';
import { si } from '../../../src/quantities/quantity.ts';

const POUND_FORCE = 4.4482216152605; // N, by definition
const setting = (pounds: number | null, inches: number) => ({
  peakDraw: pounds === null ? null : si<'N'>(pounds * POUND_FORCE),
  powerStroke: si<'m'>(inches * 0.0254),
});

describe('a bow in another setting', () => {
  it('stores by peak force times power stroke: 70 lb and 22 in over 60 lb and 20 in is 1540/1200', () => {
    const [from, to] = [setting(60, 20), setting(70, 22)];
    expect(energyRatio(from, to)).toBeCloseTo(1540 / 1200, 14);
    expect(speedRatio(from, to)).toBeCloseTo(Math.sqrt(1540 / 1200), 14);
  });
  it('is as fast as it was where nothing is changed', () =>
    expect(speedRatio(setting(60, 20), setting(60, 20))).toBe(1));
  it('is as much slower let down as it was faster turned up', () => {
    const there = speedRatio(setting(60, 20), setting(66, 21)) ?? Number.NaN;
    const back = speedRatio(setting(66, 21), setting(60, 20)) ?? Number.NaN;
    expect(there * back).toBeCloseTo(1, 14);
  });
  it('keeps a draw weight that nobody named: only the stroke tells then', () =>
    expect(speedRatio(setting(null, 20), setting(null, 24.2))).toBeCloseTo(1.1, 14)); // sqrt(1.21)
  it('is not known when only one draw weight is', () => {
    expect(speedRatio(setting(null, 20), setting(60, 20))).toBeNull();
    expect(speedRatio(setting(60, 20), setting(null, 20))).toBeNull();
  });
  it.each([
    ['a stroke of nothing', setting(60, 0)],
    ['a stroke the wrong way', setting(60, -1)],
    ['no force', setting(0, 20)],
    ['no number', setting(Number.NaN, 20)],
  ])('refuses %s', (_, wrong) => {
    expect(() => energyRatio(setting(60, 20), wrong)).toThrow(/above 0/);
    expect(() => energyRatio(wrong, setting(60, 20))).toThrow(/above 0/);
  });
});
