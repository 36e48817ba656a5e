import { describe, expect, it } from 'vitest';
import { assumedIn } from '../../../../src/setup/assemble/assumed.ts';
import { unusedUncertainties } from '../../../../src/setup/assemble/unused-uncertainties.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { EXAMPLE, SMALLEST } from '../example-text.ts';

const assumed = (text: string) =>
  Object.fromEntries(assumedIn(readSetup(text, 'setup.yaml')).map(({ key, text: value }) => [key, value]));
const airOf = (air: string) =>
  Object.entries(assumed(`${SMALLEST}air: { ${air} }`)).filter(([key]) => key.startsWith('air.'));

describe('what is said to be taken for granted is what is used', () => {
  // U.S. Standard Atmosphere, 1976, at a geometric 8000 ft, from memory: 30.5 degF, 22.23 inHg (22.22 at a geopotential 8000 ft);
  // it is dry
  it.each([
    [
      'altitude: 8000 ft',
      [
        ['air.temperature', '30 degF'],
        ['air.pressure', '22.23 inHg'],
        ['air.humidity', '0 %'],
      ],
    ],
    [
      'altitude: 8000 ft, pressure: 22 inHg',
      [
        ['air.humidity', '50 %'],
        ['air.temperature', '30 degF'],
      ],
    ],
    [
      'temperature: 70 degF',
      [
        ['air.humidity', '50 %'],
        ['air.pressure', '29.92 inHg'],
      ],
    ],
    [
      'pressure: 29 inHg',
      [
        ['air.temperature', '59 degF'],
        ['air.humidity', '50 %'],
      ],
    ],
  ])('for air: { %s }', (air, keys) => expect(airOf(air)).toEqual(keys));

  it('and the count of a group only where a mark leaves it out', () => {
    expect(Object.keys(assumed(EXAMPLE))).not.toContain('marks.arrows');
    expect(assumed(EXAMPLE.replace('arrows: 6, ', ''))['marks.arrows']).toBe('3');
  });
});

describe('uncertainties that nothing is computed from', () => {
  const unused = (text: string) => unusedUncertainties(readSetup(text, 'setup.yaml'));
  it('are named with their paths', () => {
    expect(unused(EXAMPLE)).toEqual([]);
    const text = EXAMPLE.replace(
      'arrows: 6,',
      'range_sd: 1 yd, group_sd: 0.1 in, reading_sd: 0.1, arrows: 6,',
    ).replace('mass: 452 gr ', 'mass_sd: 1 gr\n  mass: 452 gr ');
    expect(unused(text)).toEqual(['arrow.mass_sd', 'marks.1.group_sd']);
  });
  it('include that of a pitch which the marks are to tell', () =>
    expect(
      unused(
        EXAMPLE.replace('travel_per_unit: 1 mm', 'travel_per_unit: unknown, travel_per_unit_sd: 0.01 mm'),
      ),
    ).toEqual(['sight.scale.travel_per_unit_sd']));
});
