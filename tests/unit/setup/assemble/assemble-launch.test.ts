import { describe, expect, it } from 'vitest';
import { COMPOUND_VIRTUAL_MASS } from '../../../../src/bow/energy.ts';
import { fromSi } from '../../../../src/quantities/format.ts';
import { assemble } from '../../../../src/setup/assemble/assemble.ts';
import { otherShots, ratedEnergy, virtualMassPrior } from '../../../../src/setup/assemble/assemble-launch.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { EXAMPLE, SMALLEST } from '../example-text.ts';
import { problemsOf } from '../problems-of.ts';

const withBow = (keys: string, text = EXAMPLE) => text.replace('  peep_height:', `  ${keys}\n  peep_height:`);
const rated = withBow('rating: { speed: 335 fps }').replace(
  'speed: 281 fps, speed_sd: 1.5 fps',
  'speed: rated',
);

describe('launch.speed: rated', () => {
  it('takes the speed from the rating by hand: 0.97 x 335 sqrt(68/70 x 20.75/21.75 x 435/537) ft/s', () => {
    const { rig, problem } = assemble(readSetup(rated, 'setup.yaml'));
    const hand = 0.97 * 335 * Math.sqrt((68 / 70) * (20.75 / 21.75) * (435 / (452 + 85)));
    expect(Math.abs(fromSi(rig.launchSpeed, 'fps') - hand)).toBeLessThan(1e-9 /* ft/s */);
    // Half of 5 % of energy, and what the virtual mass leaves of an arrow 102 gr heavier than the rated one.
    const byMass = (85 / 2) * (1 / 435 - 1 / 537) * 0.45;
    const sd = hand * Math.hypot(0.025, byMass);
    expect(Math.abs(fromSi(problem.priors.launch_speed.sd, 'fps') - sd)).toBeLessThan(1e-6 /* ft/s */);
  });
  it('is refused without a rating', () => {
    const missing = EXAMPLE.replace('speed: 281 fps', 'speed: rated');
    expect(problemsOf(missing).map(({ path }) => path)).toEqual(['bow.rating']);
  });
  it('is the one word that is not a speed', () =>
    expect(problemsOf(EXAMPLE.replace('speed: 281 fps', 'speed: fast')).map(({ path }) => path)).toEqual([
      'launch.speed',
    ]));
});

describe('what the file says of the bow', () => {
  const bowOf = (keys: string) => readSetup(withBow(keys), 'setup.yaml').bow;

  it('takes the usual virtual mass until one is given', () => {
    expect(virtualMassPrior(readSetup(EXAMPLE, 's').bow)).toEqual(COMPOUND_VIRTUAL_MASS);
    const given = virtualMassPrior(bowOf('virtual_mass: 100 gr\n  virtual_mass_sd: 10 gr'));
    expect(Math.abs(fromSi(given.value, 'gr') - 100)).toBeLessThan(1e-9 /* gr */);
    expect(Math.abs(given.logSd - 0.1)).toBeLessThan(1e-12 /* of a logarithm, rounding of the text */);
  });
  it('lists the other arrows that were chronographed', () => {
    const shots = otherShots(
      bowOf(
        'chronographed: [{ arrow_mass: 400 gr, speed: 297 fps }, { arrow_mass: 520 gr, speed: 263 fps, speed_sd: 1 fps }]',
      ),
    );
    expect(shots.map(({ mass }) => Math.round(fromSi(mass, 'gr')))).toEqual([400, 520]);
    expect(shots.map(({ speedSd }) => Number(fromSi(speedSd, 'fps').toFixed(6)))).toEqual([1.5, 1]);
  });
  it('knows no rated energy without a rating', () =>
    expect(ratedEnergy(readSetup(EXAMPLE, 's').bow)).toBeNull());
});

it('a file of five numbers takes the speed as it is, at release', () =>
  expect(Math.abs(fromSi(assemble(readSetup(SMALLEST, 's')).rig.launchSpeed, 'fps') - 281)).toBeLessThan(
    1e-9 /* ft/s */,
  ));
