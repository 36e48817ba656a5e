import { expect, it } from 'vitest';
import { assemble } from '../../../src/setup/assemble/assemble.ts';
import { readSetup } from '../../../src/setup/read.ts';
import { EXAMPLE } from './example-text.ts';

const stepOf = (text: string) => readSetup(text, 'setup.yaml').readingStep;

it.each([
  ['tenths', '12.4', 0.1],
  ['hundredths, the last of them 0', '12.40', 0.01],
  ['whole numbers beside tenths: 12 stands for 12.0', '12', 0.1],
])('readings written to %s', (_, reading, step) =>
  expect(stepOf(EXAMPLE.replace('reading: 12.4', `reading: ${reading}`))).toBe(step),
);

it('whole numbers alone were read to one', () =>
  expect(stepOf(EXAMPLE.replaceAll(/reading: ([0-9]+)\.[0-9]/g, 'reading: $1'))).toBe(1));

it('is not there without a reading', () =>
  expect(stepOf(EXAMPLE.replaceAll(/reading: [0-9.]+, |, vertical: 0 in/g, ''))).toBeUndefined());

it('half of it, on the target, stands in the error of a mark beside the group and half a yard of range', () => {
  const sdOf = (text: string) =>
    assemble(readSetup(text, 'setup.yaml')).problem.measurements[1]?.sd ?? Number.NaN;
  // 60 yd is 54.864 m; the pin stands 33 in from the eye and a unit is 1 mm.
  const halfTenth = (0.05e-3 * 54.864) / 0.8382;
  const halfHundredth = halfTenth / 10;
  const finer = EXAMPLE.replace('31.9', '31.90');
  expect(
    Math.abs(sdOf(EXAMPLE) ** 2 - sdOf(finer) ** 2 - (halfTenth ** 2 - halfHundredth ** 2)),
  ).toBeLessThan(1e-12 /* m² */);
});
