import { chiSquaredSurvival, normalQuantile, studentTQuantile } from '../../../src/numerics/student-t.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, type Printed, referenceTable } from '../table.ts';

const folder = 'distribution-tables';

const inHalfDigits = (name: string, found: number, { value, half }: Printed): Case => ({
  name,
  error: Math.abs(found - value) / half,
  allowed: 1,
});

const students: readonly Case[] = referenceTable(folder, 'student-t.csv', [
  'degrees_of_freedom',
  'q950',
  'q975',
  'q995',
]).flatMap((row) => {
  const freedom = cell(row, 'degrees_of_freedom').value;
  const columns = [
    ['q950', 0.95],
    ['q975', 0.975],
    ['q995', 0.995],
  ] as const;
  return columns.map(([column, probability]) =>
    inHalfDigits(
      `${freedom} degrees, ${probability}`,
      studentTQuantile(probability, freedom),
      cell(row, column),
    ),
  );
});

const normals: readonly Case[] = referenceTable(folder, 'normal.csv', ['probability', 'quantile']).map(
  (row) =>
    inHalfDigits(
      cell(row, 'probability').text,
      normalQuantile(cell(row, 'probability').value),
      cell(row, 'quantile'),
    ),
);

/** The table gives the place for a chance; half of its last digit is turned into chance by the density there. */
const chiSquared: readonly Case[] = referenceTable(folder, 'chi-squared.csv', [
  'degrees_of_freedom',
  'exceeded_0p05',
  'exceeded_0p01',
]).flatMap((row) => {
  const freedom = cell(row, 'degrees_of_freedom').value;
  const columns = [
    ['exceeded_0p05', 0.05],
    ['exceeded_0p01', 0.01],
  ] as const;
  return columns.map(([column, chance]) => {
    const { value, half } = cell(row, column);
    const above = chiSquaredSurvival(value + half, freedom);
    const below = chiSquaredSurvival(value - half, freedom);
    return {
      name: `${freedom} degrees, ${chance}`,
      error: Math.abs(chance - (above + below) / 2) / ((below - above) / 2),
      allowed: 1,
    };
  });
});

const source = 'handbook tables 26.5, 26.8 and 26.10 of Abramowitz and Stegun, 1964, from memory';
const unit = 'half of the last printed digit';

export const claims: readonly Claim[] = [
  {
    claim: 'Student t quantiles are those of the table',
    source,
    unit,
    cases: students,
    notCovered: 'fractions of a degree',
  },
  { claim: 'Normal quantiles are those of the table', source, unit, cases: normals, notCovered: 'far tails' },
  {
    claim: 'Chi-squared chances are those of the table',
    source,
    unit,
    cases: chiSquared,
    notCovered: 'more than 10 degrees',
  },
];
