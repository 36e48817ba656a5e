import { expect, it } from 'vitest';
import { moistAir, moistAirDensity, saturationPressure } from '../../../src/atmosphere/moist-air.ts';
import { viscosity } from '../../../src/atmosphere/viscosity.ts';
import { DomainError } from '../../../src/quantities/domain-error.ts';
import { si } from '../../../src/quantities/quantity.ts';

const weather = (temperature: number, pressure: number, humidity: number) => ({
  temperature: si<'K'>(temperature),
  pressure: si<'Pa'>(pressure),
  humidity: si<'1'>(humidity),
});

it('the air carries what was measured and what follows from it', () => {
  const given = weather(288.15, 101_325, 0.5);
  expect(moistAir(given)).toEqual({
    ...given,
    density: moistAirDensity(given),
    viscosity: viscosity(given.temperature),
  });
});

it('cold, hot, high and wet corners are within 0.2 % of ideal-gas mixing', () => {
  // rho = (p - e) / (Rd T) + e / (Rv T), Rd = 287.05, Rv = 461.5 J/(kg K); compressibility leaves up to 0.12 % here.
  for (const T of [233, 253.15, 288.15, 323.15])
    for (const p of [50_000, 110_000])
      for (const h of [0, 0.5, 1]) {
        const e = h * saturationPressure(T);
        const ideal = (p - e) / (287.05 * T) + e / (461.5 * T);
        expect(Math.abs(moistAirDensity(weather(T, p, h)) / ideal - 1)).toBeLessThan(2e-3 /* relative */);
      }
});

it('water boils at 100 degC under one atmosphere, to 0.2 %', () => {
  // The fit is meant for room temperature; 101 325 Pa at 373.124 K by definition of the boiling point.
  expect(Math.abs(saturationPressure(373.124) / 101_325 - 1)).toBeLessThan(2e-3 /* relative */);
});

it.each([
  ['too cold', weather(232, 101_325, 0.5)],
  ['degrees Celsius', weather(20, 101_325, 0.5)],
  ['hectopascals', weather(288, 1013, 0.5)],
  ['percent', weather(288, 101_325, 50)],
  ['no temperature', weather(Number.NaN, 101_325, 0.5)],
])('moistAirDensity of %s throws', (_, given) => expect(() => moistAirDensity(given)).toThrow(DomainError));

it('viscosity of no air throws', () => {
  expect(() => viscosity(si(100))).toThrow(DomainError);
  expect(() => viscosity(si(Number.NaN))).toThrow(DomainError);
});
