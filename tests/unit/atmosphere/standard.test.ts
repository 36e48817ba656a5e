import { expect, it } from 'vitest';
import { moistAir } from '../../../src/atmosphere/moist-air.ts';
import {
  densityAltitude,
  pressureAltitude,
  standardAir,
  standardPressure,
  stationPressure,
} from '../../../src/atmosphere/standard.ts';
import { DomainError } from '../../../src/quantities/domain-error.ts';
import { si } from '../../../src/quantities/quantity.ts';

it('sea level has the defining constants', () => {
  const air = standardAir(si(0));
  expect(air.temperature).toBe(288.15);
  expect(air.pressure).toBe(101_325);
  expect(air.humidity).toBe(0);
  // rho0 is printed as 1.2250 kg/m3.
  expect(Math.abs(air.density - 1.225)).toBeLessThan(0.00005 /* kg/m3: half of the last printed digit */);
});

it('a sea-level pressure is carried up as by hand, to 1 Pa', () => {
  // 30.10 inHg = 101930.3 Pa. (101930.3/101325)^(1/5.255876) = exp(0.0059561/5.255876) = 1.0011339.
  // H = 1500 x 6356766/6358266 = 1499.646 m; 0.0065 H / 288.15 = 0.0338286.
  // p = 101325 x 0.9673053^5.255876 = 101325 x exp(-0.1747110) = 85082 Pa.
  expect(Math.abs(stationPressure(si(30.1 * 3386.389), si(1500)) - 85_082)).toBeLessThan(1 /* Pa */);
});

it('a standard day at sea level reads the standard pressure upstairs, to rounding', () => {
  for (const altitude of [-300, 0, 800, 3000])
    expect(stationPressure(si(101_325), si(altitude)) / standardPressure(si(altitude))).toBeCloseTo(1, 13);
});

it('the density altitude of hot humid air is what the gas law says, to 1 %', () => {
  // 35 degC, dry, 101325 Pa: rho = p M/(R T) = 101325 x 0.0289652 / (8.31447 x 308.15) = 1.1455 kg/m3.
  // H = 44330.8 [1 - (1.1455/1.225)^(1/4.255876)] = 44330.8 x 0.015645 = 693.6 m.
  const air = moistAir({ temperature: si(308.15), pressure: si(101_325), humidity: si(0) });
  expect(Math.abs(densityAltitude(air.density) - 693.6)).toBeLessThan(7 /* m */);
});

it.each([-400, 0, 1500, 6000])('the standard pressure of %d m stands at that altitude', (altitude) => {
  expect(pressureAltitude(standardPressure(si(altitude)))).toBeCloseTo(altitude, 6);
});

it('air denser than at sea level has a negative density altitude', () => {
  expect(densityAltitude(si(1.4))).toBeLessThan(-1000);
});

it.each([
  ['standardAir above the first layer', () => standardAir(si(11_100))],
  ['standardAir far below the sea', () => standardAir(si(-600))],
  ['standardAir at no altitude', () => standardAir(si(Number.NaN))],
  ['stationPressure of a station pressure in hectopascals', () => stationPressure(si(1013.25), si(0))],
  ['densityAltitude of nothing', () => densityAltitude(si(0))],
])('%s throws', (_, run) => expect(run).toThrow(DomainError));
