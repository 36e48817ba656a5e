import { viscosity } from '../../../src/atmosphere/viscosity.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const rows = referenceTable('sutherland-viscosity', 'viscosities.csv', ['temperature_K', 'viscosity_Pas']);

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'Viscosity of air',
    source: 'U.S. Standard Atmosphere, 1976, equation 51',
    unit: 'relative',
    cases: rows.map((row) => ({
      name: `${cell(row, 'temperature_K').text} K`,
      error: Math.abs(viscosity(si(cell(row, 'temperature_K').value)) / cell(row, 'viscosity_Pas').value - 1),
      allowed: 1e-5,
    })),
    notCovered: 'humidity, at most 1 %',
  },
];
