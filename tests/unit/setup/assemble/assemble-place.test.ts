import { describe, expect, it } from 'vitest';
import { STANDARD_GRAVITY } from '../../../../src/quantities/exact.ts';
import { assemble } from '../../../../src/setup/assemble/assemble.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { SMALLEST } from '../example-text.ts';

const rigOf = (more: string) => assemble(readSetup(`${SMALLEST}\n${more}`, 'setup.yaml')).rig;

describe('gravity', () => {
  it('is the standard one where no latitude is given', () => {
    expect(rigOf('').conditions.freeFall).toBe(STANDARD_GRAVITY);
    expect(rigOf('air: { altitude: 2350 m }').conditions.freeFall).toBe(STANDARD_GRAVITY);
  });
  it('is that of latitude and altitude: 9.79805 m/s2 at 44 deg and 2350 m, by hand', () => {
    const { freeFall } = rigOf('latitude: 44 deg\nair: { altitude: 2350 m }').conditions;
    // 9.78033 (1 + 0.00530244 sin2 - 0.0000058 sin2 2x) less 0.3086 mGal a metre: the 1967 formula, good to 1e-5.
    const sine2 = Math.sin((44 * Math.PI) / 180) ** 2;
    const hand =
      9.780327 * (1 + 0.0053024 * sine2 - 0.0000058 * Math.sin((88 * Math.PI) / 180) ** 2) - 0.3086e-5 * 2350;
    expect(Math.abs(freeFall - hand)).toBeLessThan(2e-5 /* m/s2 */);
  });
  it('takes the altitude from the station pressure where none is given: 763 hPa is 2333 m in the standard atmosphere', () => {
    const told = rigOf('latitude: 44 deg\nair: { pressure: 763 hPa, temperature: 50 degF }').conditions;
    const known = rigOf('latitude: 44 deg\nair: { altitude: 2333 m }').conditions;
    expect(Math.abs(told.freeFall - known.freeFall)).toBeLessThan(3e-5 /* m/s2: 10 m */);
  });
});

describe('keys of the place and the sight', () => {
  it('wind.up is air that rises, and needs no wind from the side', () => {
    const { wind } = rigOf('wind: { speed: 0 mph, up: 2 m/s }').conditions;
    expect([wind.up, wind.across]).toEqual([2, expect.closeTo(0, 12)]);
  });
  it('slope is that of the shots and sight.zero_slope that of the zero', () => {
    const { conditions, zeroSlope } = rigOf('slope: 20 deg');
    expect([conditions.slope, zeroSlope]).toEqual([expect.closeTo(Math.PI / 9, 12), 0]);
    const text = `${SMALLEST}\nslope: 20 deg`.replace('peep_to_pin:', 'zero_slope: -10 deg, peep_to_pin:');
    const hill = assemble(readSetup(text, 'setup.yaml')).rig;
    expect(hill.zeroSlope).toBeCloseTo(-Math.PI / 18, 12);
  });
  it('sight.bar_angle is the angle of the travel', () => {
    const text = SMALLEST.replace('peep_to_pin:', 'bar_angle: 5 deg, peep_to_pin:');
    expect(assemble(readSetup(text, 'setup.yaml')).rig.geometry.barAngle).toBeCloseTo(Math.PI / 36, 12);
  });
});
