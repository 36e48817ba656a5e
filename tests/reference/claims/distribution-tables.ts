import { chiSquaredSurvival, normalCumulative } from '../../../src/numerics/distributions.ts';
import { normalRange } from '../../../src/numerics/normal-range.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const folder = 'distribution-tables';

/** The table gives the place for a chance; half of its last digit is turned into chance: from `low` to `high`. */
const bracketed = (name: string, chance: number, low: number, high: number): Case => ({
  name,
  error: Math.abs(chance - (low + high) / 2) / ((high - low) / 2),
  allowed: 1,
});

const normals: readonly Case[] = referenceTable(folder, 'normal.csv', ['probability', 'quantile']).map(
  (row) => {
    const probability = cell(row, 'probability');
    const { value, half } = cell(row, 'quantile');
    return bracketed(
      probability.text,
      probability.value,
      normalCumulative(value - half),
      normalCumulative(value + half),
    );
  },
);

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
    return bracketed(`${freedom} degrees, ${chance}`, chance, above, below);
  });
});

/** A table printed to three decimals, and the step of the quadrature: 1e-4. */
const ranges: readonly Case[] = referenceTable(folder, 'range.csv', ['values', 'mean_d2', 'sd_d3']).flatMap(
  (row) => {
    const values = cell(row, 'values').value;
    const { mean, sd } = normalRange(values);
    const columns = [
      ['mean_d2', mean],
      ['sd_d3', sd],
    ] as const;
    return columns.map(([column, ours]) => {
      const { value, half } = cell(row, column);
      return { name: `${values} values, ${column}`, error: Math.abs(ours - value), allowed: half + 1e-4 };
    });
  },
);

const source = 'handbook tables 26.5 and 26.8 of Abramowitz and Stegun, 1964, from memory';
const unit = 'half of the last printed digit';

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'Normal chances are those of the table',
    source,
    unit,
    cases: normals,
    notCovered: 'far tails',
  },
  {
    kind: 'law',
    claim: 'Chi-squared chances are those of the table',
    source,
    unit,
    cases: chiSquared,
    notCovered: 'more than 10 degrees',
  },
  {
    kind: 'law',
    claim: 'The range of a few normal values has the mean and the standard deviation of the table',
    source: 'control-chart constants d2 and d3 of handbooks, after Tippett 1925, from memory',
    unit: 'standard deviations',
    cases: ranges,
    notCovered: 'groups that are not normal',
  },
];
