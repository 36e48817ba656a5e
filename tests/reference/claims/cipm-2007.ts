import { moistAirDensity, saturationPressure } from '../../../src/atmosphere/moist-air.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, type Row, referenceTable } from '../table.ts';

const folder = 'cipm-2007';
const states = referenceTable(folder, 'states.csv', [
  'temperature_C',
  'pressure_Pa',
  'humidity',
  'cipm_kgpm3',
  'saturation_Pa',
  'coolprop_kgpm3',
]);
const simplified = referenceTable(folder, 'simplified.csv', [
  'formula',
  'temperature_C',
  'pressure_Pa',
  'humidity',
  'density_kgpm3',
]);

const density = (row: Row): number =>
  moistAirDensity({
    temperature: si(cell(row, 'temperature_C').value + 273.15),
    pressure: si(cell(row, 'pressure_Pa').value),
    humidity: si(cell(row, 'humidity').value),
  });
const state = (row: Row): string =>
  `${cell(row, 'temperature_C').text} degC, ${cell(row, 'pressure_Pa').text} Pa, ${cell(row, 'humidity').text}`;

const against = (rows: readonly Row[], column: string, allowed: number): readonly Case[] =>
  rows.map((row) => ({
    name: state(row),
    error: Math.abs(density(row) / cell(row, column).value - 1),
    allowed,
  }));

const saturation: readonly Case[] = states.map((row) => {
  const { value, half } = cell(row, 'saturation_Pa');
  return {
    name: `saturation pressure, ${state(row)}`,
    error: Math.abs(saturationPressure(cell(row, 'temperature_C').value + 273.15) - value) / half,
    allowed: 1,
  };
});

export const claims: readonly Claim[] = [
  {
    kind: 'program',
    claim: 'Moist-air density against an independent equation of state',
    source: 'CoolProp 8.0, humid air',
    unit: 'relative',
    // The two formulations take the molar mass of dry air 2e-5 apart and differ by a constant 4e-5.
    cases: [...against(states, 'coolprop_kgpm3', 5e-5), ...against(simplified, 'density_kgpm3', 1e-4)],
    notCovered: 'temperatures below 0 degC; carbon dioxide other than 400 ppm',
  },
  {
    kind: 'law',
    claim: "Moist-air density by CIPM-2007 to the formula's own digits",
    source: 'Picard and others, Metrologia 45 (2008) 149; computed apart from its constants',
    unit: 'relative',
    // Six decimals of a density near 1.2.
    cases: against(states, 'cipm_kgpm3', 1e-6),
    notCovered: 'an error of the formula itself',
  },
  {
    kind: 'law',
    claim: 'Saturation pressure of water by CIPM-2007',
    source: 'Picard and others, Metrologia 45 (2008) 149; computed apart from its constants',
    unit: 'half of the last printed digit',
    cases: saturation,
    notCovered: 'ice',
  },
];
