import { expect, it } from 'vitest';
import { assemble } from '../../../../src/setup/assemble/assemble.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { EXAMPLE } from '../example-text.ts';

const offsetOf = (text: string) => assemble(readSetup(text, 'setup.yaml')).problem.priors.scale_offset;

it('a stated uncertainty of the reading at the zero is that of the place of the scale', () => {
  const stated = EXAMPLE.replace('at_zero: 12.4', 'at_zero: 12.4, at_zero_sd: 0.15');
  expect(offsetOf(stated)).toEqual({ value: 0, sd: 0.15 });
  expect(offsetOf(EXAMPLE).sd).not.toBe(0.15);
});
