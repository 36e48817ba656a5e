import { freeFallAt } from '../../../src/flight/free-fall.ts';
import { DEGREE } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

export const claims: readonly Claim[] = [
  {
    kind: 'definition',
    claim: 'Free fall by latitude and altitude',
    source: 'World Geodetic System 1984 (NIMA TR8350.2) and Geodetic Reference System 1980, from memory',
    unit: 'half of the last printed digit',
    cases: referenceTable('normal-gravity', 'figures.csv', [
      'latitude_deg',
      'altitude_m',
      'gravity_mps2',
    ]).map((row) => {
      const [latitude, altitude] = [cell(row, 'latitude_deg'), cell(row, 'altitude_m')];
      const printed = cell(row, 'gravity_mps2');
      const ours = freeFallAt(si(latitude.value * DEGREE), si(altitude.value));
      return {
        name: `${latitude.text} deg, ${altitude.text} m`,
        error: Math.abs(ours - printed.value) / printed.half,
        allowed: 1,
      };
    }),
    notCovered: 'hills, ores and the tide: under 1e-4 of it',
  },
];
