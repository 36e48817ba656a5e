import fc from 'fast-check';
import { expect, it } from 'vitest';
import { moistAirDensity } from '../../src/atmosphere/moist-air.ts';
import {
  densityAltitude,
  standardAir,
  standardPressure,
  stationPressure,
} from '../../src/atmosphere/standard.ts';
import { viscosity } from '../../src/atmosphere/viscosity.ts';
import { windFrom } from '../../src/atmosphere/wind.ts';
import { si } from '../../src/quantities/quantity.ts';

const runs = { seed: 20_250_301, numRuns: 300 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const weather = fc.record({
  temperature: between(240, 320).map(si<'K'>),
  pressure: between(52_000, 108_000).map(si<'Pa'>),
  humidity: between(0, 0.9).map(si<'1'>),
});

it('air thins with humidity and heat and thickens with pressure', () => {
  fc.assert(
    fc.property(weather, (air) => {
      const density = moistAirDensity(air);
      expect(moistAirDensity({ ...air, humidity: si(air.humidity + 0.1) })).toBeLessThan(density);
      expect(moistAirDensity({ ...air, temperature: si(air.temperature + 1) })).toBeLessThan(density);
      expect(moistAirDensity({ ...air, pressure: si(air.pressure + 100) })).toBeGreaterThan(density);
    }),
    runs,
  );
});

it('air gets more viscous with heat', () => {
  fc.assert(
    fc.property(between(160, 390), (T) => {
      expect(viscosity(si(T + 1))).toBeGreaterThan(viscosity(si(T)));
    }),
    runs,
  );
});

it('the density altitude of standard air is its altitude, to 1 mm', () => {
  fc.assert(
    fc.property(between(-490, 11_000), (altitude) => {
      expect(Math.abs(densityAltitude(standardAir(si(altitude)).density) - altitude)).toBeLessThan(
        1e-3 /* m */,
      );
    }),
    runs,
  );
});

it("higher up there is less pressure, whatever the day's sea-level pressure", () => {
  fc.assert(
    fc.property(between(-490, 5000), between(86_000, 109_000), (altitude, reduced) => {
      expect(standardPressure(si(altitude + 1))).toBeLessThan(standardPressure(si(altitude)));
      expect(stationPressure(si(reduced), si(altitude + 1))).toBeLessThan(
        stationPressure(si(reduced), si(altitude)),
      );
      expect(stationPressure(si(reduced + 10), si(altitude))).toBeGreaterThan(
        stationPressure(si(reduced), si(altitude)),
      );
    }),
    runs,
  );
});

it('a wind has its speed, and its mirror image crosses the other way', () => {
  fc.assert(
    fc.property(between(0, 30), between(-10, 10), (speed, from) => {
      const wind = windFrom(si(speed), si(from));
      const mirrored = windFrom(si(speed), si(-from));
      expect(Math.abs(Math.hypot(wind.tail, wind.across) - speed)).toBeLessThan(
        1e-12 /* m/s, rounding of 30 */,
      );
      // Adding 0 makes -0 into 0.
      expect(mirrored.across + 0).toBe(-wind.across + 0);
      expect(mirrored.tail).toBe(wind.tail);
    }),
    runs,
  );
});
