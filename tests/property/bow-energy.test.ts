import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstBending } from '../../src/arrow/parts/beam.ts';
import {
  type BowEnergy,
  efficiency,
  fitBowEnergy,
  launchEnergy,
  launchSpeed,
  speedPerMass,
} from '../../src/bow/energy.ts';
import { si } from '../../src/quantities/quantity.ts';

const SEED = { seed: 6, numRuns: 200 };
const kilograms = fc.double({ min: 0.01, max: 0.06, noNaN: true }).map((value) => si<'kg'>(value));
const shot = fc.record({
  mass: kilograms,
  speed: fc.double({ min: 40, max: 120, noNaN: true }).map((value) => si<'m/s'>(value)),
  speedSd: fc.double({ min: 0.05, max: 2, noNaN: true }).map((value) => si<'m/s'>(value)),
});
/** Far enough apart for rounding not to decide. */
const twoMasses = fc
  .tuple(kilograms, kilograms)
  .filter(([a, b]) => Math.abs(a - b) > 1e-6)
  .map(([a, b]) => (a < b ? ([a, b] as const) : ([b, a] as const)));

const forAny = (
  law: (bow: BowEnergy, light: BowEnergy['virtualMass'], heavy: BowEnergy['virtualMass']) => void,
) =>
  fc.assert(
    fc.property(shot, twoMasses, (arrow, [light, heavy]) => {
      law(fitBowEnergy([arrow]), light, heavy);
    }),
    SEED,
  );

describe('from the same bow a heavier arrow', () => {
  it('is slower', () =>
    forAny((bow, light, heavy) => {
      expect(launchSpeed(bow, heavy).value).toBeLessThan(launchSpeed(bow, light).value);
    }));
  it('has more momentum', () =>
    forAny((bow, light, heavy) => {
      expect(heavy * launchSpeed(bow, heavy).value).toBeGreaterThan(light * launchSpeed(bow, light).value);
    }));
  it('takes more energy along, and a larger share of it', () =>
    forAny((bow, light, heavy) => {
      expect(launchEnergy(bow, heavy).value).toBeGreaterThan(launchEnergy(bow, light).value);
      expect(efficiency(bow, heavy).value).toBeGreaterThan(efficiency(bow, light).value);
    }));
  it('loses less speed to one more grain', () =>
    forAny((bow, light, heavy) => {
      expect(speedPerMass(bow, heavy).value).toBeGreaterThan(speedPerMass(bow, light).value);
    }));
});

describe('the fit', () => {
  it('does not care in which order the arrows were chronographed', () =>
    fc.assert(
      fc.property(fc.array(shot, { minLength: 2, maxLength: 5 }), (arrows) => {
        const [a, b] = [fitBowEnergy(arrows), fitBowEnergy(arrows.toReversed())];
        expect(Math.abs(a.virtualMass / b.virtualMass - 1)).toBeLessThan(
          1e-5 /* relative: the solver's stop */,
        );
        expect(Math.abs(a.energy / b.energy - 1)).toBeLessThan(1e-5 /* relative */);
      }),
      SEED,
    ));
  it('recovers a bow from exact speeds of two arrows, whatever the bow', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 200, noNaN: true }),
        fc.double({ min: 0.001, max: 0.02, noNaN: true }),
        (energy, virtualMass) => {
          const made = (mass: number) => ({
            mass: si<'kg'>(mass),
            speed: si<'m/s'>(Math.sqrt((2 * energy) / (mass + virtualMass))),
            speedSd: si<'m/s'>(0.3),
          });
          const bow = fitBowEnergy([made(0.02), made(0.035)], null);
          expect(Math.abs(bow.virtualMass / virtualMass - 1)).toBeLessThan(1e-6 /* relative */);
          expect(Math.abs(bow.energy / energy - 1)).toBeLessThan(1e-6 /* relative */);
        },
      ),
      SEED,
    ));
});

describe('a bending shaft', () => {
  const shaft = fc.record({
    length: fc.double({ min: 0.5, max: 0.9, noNaN: true }),
    stiffness: fc.double({ min: 2, max: 15, noNaN: true }),
    massPerLength: fc.double({ min: 0.01, max: 0.05, noNaN: true }),
    loads: fc.array(
      fc.record({
        place: fc.double({ min: -0.02, max: 0.95, noNaN: true }),
        mass: fc.double({ min: 0, max: 0.02, noNaN: true }).map((mass) => si<'kg'>(mass)),
      }),
      { maxLength: 5 },
    ),
  });
  const beamOf = ({
    length,
    stiffness,
    massPerLength,
    loads,
  }: typeof shaft extends fc.Arbitrary<infer T> ? T : never) => ({
    length: si<'m'>(length),
    stiffness: si<'N m2'>(stiffness),
    massPerLength: si<'kg/m'>(massPerLength),
    loads,
  });

  it('never bends faster for one more mass, wherever it sits', () =>
    fc.assert(
      fc.property(
        shaft,
        fc.double({ min: -0.02, max: 0.95, noNaN: true }),
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        (given, place, mass) => {
          const beam = beamOf(given);
          const loaded = { ...beam, loads: [...beam.loads, { place, mass: si<'kg'>(mass) }] };
          expect(firstBending(loaded).frequency).toBeLessThanOrEqual(
            firstBending(beam).frequency * (1 + 1e-9),
          );
        },
      ),
      SEED,
    ));
  it('bends the same seen from the other end', () =>
    fc.assert(
      fc.property(shaft, (given) => {
        const beam = beamOf(given);
        const turned = {
          ...beam,
          loads: beam.loads.map(({ place, mass }) => ({ place: beam.length - place, mass })),
        };
        expect(Math.abs(firstBending(turned).frequency / firstBending(beam).frequency - 1)).toBeLessThan(
          1e-8 /* relative */,
        );
      }),
      SEED,
    ));
});
