import { describe, expect, it } from 'vitest';
import { launchSpeed } from '../../../src/bow/energy.ts';
import { ratedBowEnergy, USUAL_RATING } from '../../../src/bow/rating.ts';
import { si } from '../../../src/quantities/quantity.ts';

const inches = (count: number) => si<'m'>(count * 0.0254);
const pounds = (count: number) => si<'N'>(count * 4.4482216152605);
const grains = (count: number) => si<'kg'>(count * 64.79891e-6);
const rating = { ...USUAL_RATING, speed: si<'m/s'>(103.632) };
const asRated = { drawWeight: pounds(70), drawLength: inches(30), powerStroke: inches(21.75) };

describe('ratedBowEnergy', () => {
  it('as rated gives 97 % of the rated speed to the rated arrow', () => {
    const { value, sd } = launchSpeed(ratedBowEnergy(rating, asRated), grains(350));
    expect(Math.abs(value / 103.632 - 0.97)).toBeLessThan(1e-12 /* relative */);
    // Half of 5 % of energy; K cancels at the rated mass.
    expect(Math.abs(sd / value - 0.025)).toBeLessThan(1e-12 /* relative */);
  });
  it('at 60 lb and 28 in by hand: energy x 60/70 x 19.75/21.75, so 0.97 x 340 x 0.88222 = 290.96 ft/s', () => {
    const bow = ratedBowEnergy(rating, {
      ...asRated,
      drawWeight: pounds(60),
      drawLength: inches(28),
      powerStroke: inches(19.75),
    });
    const feet = launchSpeed(bow, grains(350)).value / 0.3048;
    expect(Math.abs(feet - 0.97 * 340 * Math.sqrt((60 / 70) * (19.75 / 21.75)))).toBeLessThan(
      1e-9 /* ft/s */,
    );
    expect(Math.abs(feet - 290.96)).toBeLessThan(0.01 /* ft/s: the hand figure's print */);
  });
  it('is less sure of arrows other than the rated one', () => {
    const bow = ratedBowEnergy(rating, asRated);
    const relative = (mass: number) =>
      launchSpeed(bow, grains(mass)).sd / launchSpeed(bow, grains(mass)).value;
    expect(relative(500)).toBeGreaterThan(relative(350));
    expect(relative(300)).toBeGreaterThan(relative(350));
  });
  it('the rated arrow is 5 gr for each pound, 0.073 g for each newton', () => {
    expect(Math.abs(USUAL_RATING.arrowMass / USUAL_RATING.drawWeight - 0.073e-3)).toBeLessThan(
      0.0005e-3 /* kg/N: the print */,
    );
  });
  it('refuses a bow without power stroke', () =>
    expect(() => ratedBowEnergy(rating, { ...asRated, powerStroke: inches(0) })).toThrow(/above 0/));
});
