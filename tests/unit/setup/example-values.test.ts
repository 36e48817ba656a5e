import { expect, it } from 'vitest';
import { exampleValues } from '../../../src/setup/example-values.ts';
import { starterSetup } from '../../../src/setup/starter.ts';
import { EXAMPLE } from './example-text.ts';

const starter = starterSetup({ units: 'imperial' });
const NEEDED = ['bow.peep_height', 'arrow.diameter', 'arrow.mass', 'launch.speed', 'sight.peep_to_pin'];

it('an untouched template has nothing of its own, in either system', () => {
  expect(exampleValues(starter)).toEqual(expect.arrayContaining(NEEDED));
  expect(exampleValues(starterSetup({ units: 'metric' }))).toEqual(expect.arrayContaining(NEEDED));
  expect(exampleValues(starter)).toContain('arrow.parts.point.mass');
});

it('a value that was changed is the archer’s own', () =>
  expect(exampleValues(starter.replace('mass: 452 gr', 'mass: 417 gr'))).not.toContain('arrow.mass'));

it('so is one that is the same, once its comment is gone', () =>
  expect(exampleValues(starter.replace(/(speed: 281 fps) +# NEEDED.*/, '$1'))).not.toContain('launch.speed'));

it('a file that was written by hand has none, though its numbers are those of the template', () =>
  expect(exampleValues(EXAMPLE)).toEqual([]));
