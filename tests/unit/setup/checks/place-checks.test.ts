import { describe, expect, it } from 'vitest';
import { readSetup } from '../../../../src/setup/read.ts';
import { SMALLEST } from '../example-text.ts';
import { messagesOf } from '../problems-of.ts';

const withPlaces = (...places: readonly string[]): string =>
  `${SMALLEST}places:\n${places.map((place) => `  - { ${place} }\n`).join('')}`;

describe('places', () => {
  it('are read in SI: 9800 ft is 2987.04 m, 25 degF is 269.261 K', () => {
    const { places } = readSetup(
      withPlaces('name: high camp, altitude: 9800 ft, temperature: 25 degF'),
      'a.yaml',
    );
    expect(places).toHaveLength(1);
    expect(places?.[0]?.name).toBe('high camp');
    expect(places?.[0]?.altitude).toBeCloseTo(2987.04, 9);
    expect(places?.[0]?.temperature).toBeCloseTo(269.261, 3);
  });

  it.each([
    [['altitude: 9800 ft'], 'name is missing', 6],
    [['name: "", altitude: 9800 ft'], 'a place needs a name', 6],
    [['name: camp', 'name: Camp'], '"Camp" is already the name of an earlier place', 7],
    [['name: camp, altitude: 9800 ft, pressure: 29.9 inHg'], 'at 9800 ft that is about 20.7 inHg', 6],
    [['name: camp, sea_level_pressure: 29.9 inHg'], 'altitude is missing', 6],
    [['name: camp, altitude: 980'], '"980" has no unit, and more than one would fit', 6],
    [['name: camp, altitude: 9800 lb'], '"9800 lb" is a mass', 6],
    [['name: camp, alttude: 9800 ft'], 'altitude', 6],
  ])('%j are refused with the line', (places, message, line) => {
    const [first, ...others] = messagesOf(withPlaces(...places));
    expect(others).toEqual([]);
    expect(first).toContain(message);
    expect(first).toMatch(new RegExp(`^setup\\.yaml:${line}:`));
  });
});
