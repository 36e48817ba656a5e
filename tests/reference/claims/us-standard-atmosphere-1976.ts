import { standardAir, standardPressure } from '../../../src/atmosphere/standard.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const folder = 'us-standard-atmosphere-1976';
const source = 'U.S. Standard Atmosphere, 1976';

const heights = referenceTable(folder, 'heights.csv', [
  'height_m',
  'temperature_K',
  'pressure_Pa',
  'density_kgpm3',
  'viscosity_Pas',
  'kinematic_m2ps',
]);

/** Errors in digits of print: 1 is half of the last printed digit. */
const printed: readonly Case[] = heights.flatMap((row) => {
  const height = cell(row, 'height_m');
  const air = standardAir(si(height.value));
  const ours = {
    temperature_K: air.temperature,
    pressure_Pa: air.pressure,
    density_kgpm3: air.density,
    viscosity_Pas: air.viscosity,
    kinematic_m2ps: air.viscosity / air.density,
  };
  return Object.entries(ours).map(([column, value]) => {
    const { value: theirs, half } = cell(row, column);
    return { name: `${height.text} m ${column}`, error: Math.abs(value - theirs) / half, allowed: 1 };
  });
});

/** dP/dZ = -rho g(Z) by Simpson's rule in steps of 5 m: the definition, without the closed form. */
function hydrostaticPressure(height: number): number {
  const radius = 6_356_766;
  const rate = (Z: number) => {
    const H = (radius * Z) / (radius + Z);
    const gravity = 9.80665 * (radius / (radius + Z)) ** 2;
    return (-gravity * 28.9644) / (8314.32 * (288.15 - 0.0065 * H));
  };
  const steps = Math.ceil(Math.abs(height) / 5);
  const h = height / steps;
  let logarithm = Math.log(101_325);
  for (let i = 0; i < steps; i++)
    logarithm += (h / 6) * (rate(i * h) + 4 * rate((i + 0.5) * h) + rate((i + 1) * h));
  return Math.exp(logarithm);
}

const between: readonly Case[] = [-400, 250, 750, 1250, 1750, 2250, 2750, 4500, 7000, 10_500].map(
  (height) => ({
    name: `${height} m`,
    error: Math.abs(standardPressure(si(height)) / hydrostaticPressure(height) - 1) * 100,
    // Simpson's rule in 5 m steps is good to 1e-12; the rest is rounding of the exponent.
    allowed: 1e-7,
  }),
);

const handbook: readonly Case[] = referenceTable(folder, 'handbook.csv', [
  'height_m',
  'temperature_C',
  'pressure_Pa',
  'psi_digit',
  'kelvin_digit',
]).flatMap((row) => {
  const height = cell(row, 'height_m');
  const air = standardAir(si(height.value));
  const temperature = cell(row, 'temperature_C');
  return [
    {
      name: `${height.text} m pressure`,
      error:
        Math.abs(air.pressure - cell(row, 'pressure_Pa').value) / (cell(row, 'psi_digit').value * 6894.757),
      allowed: 1,
    },
    {
      name: `${height.text} m temperature`,
      error: Math.abs(air.temperature - 273.15 - temperature.value) / cell(row, 'kelvin_digit').value,
      allowed: 1,
    },
  ];
});

const top: readonly Case[] = referenceTable(folder, 'layer-top.csv', [
  'geopotential_m',
  'temperature_K',
  'pressure_Pa',
]).flatMap((row) => {
  const H = cell(row, 'geopotential_m').value;
  const air = standardAir(si((6_356_766 * H) / (6_356_766 - H)));
  return [
    {
      name: 'pressure',
      error: Math.abs(air.pressure - cell(row, 'pressure_Pa').value) / cell(row, 'pressure_Pa').half,
      allowed: 1,
    },
    {
      name: 'temperature',
      error: Math.abs(air.temperature - cell(row, 'temperature_K').value) / cell(row, 'temperature_K').half,
      allowed: 1,
    },
  ];
});

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'The standard atmosphere at the heights of its table',
    source,
    unit: 'half of the last printed digit',
    cases: [...printed, ...top],
    notCovered: 'heights above 11 km; a real day',
  },
  {
    kind: 'law',
    claim: 'The standard atmosphere between the heights of its table',
    source: `${source}: hydrostatic equation, integrated by the test`,
    unit: '%',
    cases: between,
    notCovered: 'the weather',
  },
  {
    kind: 'law',
    claim: 'The standard atmosphere at 5000 ft and 10 000 ft of a handbook',
    source: 'engineering handbook table, from the standard',
    unit: 'half of the last printed digit',
    cases: handbook,
    notCovered: 'more than the three or four digits the handbook keeps',
  },
];
