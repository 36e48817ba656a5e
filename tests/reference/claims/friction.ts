import {
  laminarCylinder,
  laminarPlate,
  mixedFriction,
  turbulentCylinder,
  turbulentPlate,
} from '../../../src/arrow/drag/friction.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const plates = 'plate-friction';
const laws = referenceTable(plates, 'laws.csv', [
  'reynolds',
  'laminar',
  'power',
  'logarithmic',
  'logarithmic_mixed',
  'barrowman',
]);
const digits = (ours: number, { value, half }: { value: number; half: number }) =>
  Math.abs(ours - value) / half;

const lawCases: readonly Case[] = laws.flatMap((row) => {
  const R = cell(row, 'reynolds');
  return [
    { name: `laminar, R ${R.text}`, error: digits(laminarPlate(R.value), cell(row, 'laminar')), allowed: 1 },
    {
      name: `turbulent, R ${R.text}`,
      error: digits(turbulentPlate(R.value), cell(row, 'power')),
      allowed: 1,
    },
  ];
});

const spread: readonly Case[] = laws.flatMap((row) => {
  const R = cell(row, 'reynolds');
  return ['logarithmic', 'barrowman'].map((law) => ({
    name: `${law}, R ${R.text}`,
    error: Math.abs(turbulentPlate(R.value) / cell(row, law).value - 1) * 100,
    // What the published turbulent laws differ by among themselves.
    allowed: 7,
  }));
});

const examples: readonly Case[] = referenceTable(plates, 'examples.csv', [
  'state',
  'reynolds',
  'slenderness',
  'friction',
]).map((row) => {
  const state = cell(row, 'state').text;
  const law = state === 'laminar' ? laminarCylinder : turbulentCylinder;
  const slender = cell(row, 'slenderness');
  const ours = law(cell(row, 'reynolds').value, slender.value);
  return {
    name: `${state}, l/d ${slender.text}`,
    error: Math.abs(ours / cell(row, 'friction').value - 1) * 100,
    // Two to three printed digits.
    allowed: 0.5,
  };
});

const transition: readonly Case[] = referenceTable(plates, 'transition.csv', ['critical', 'B']).map((row) => {
  const critical = cell(row, 'critical');
  const R = 4 * critical.value;
  const ours = mixedFriction(
    critical.value / R,
    (share) => laminarPlate(share * R),
    (share) => turbulentPlate(share * R),
  );
  const printed = 0.074 * R ** -0.2 - cell(row, 'B').value / R;
  // The printed constants are rounded to two digits, and the last belongs to another law: SOURCE.md.
  return {
    name: `transition at ${critical.text}, four times as far`,
    error: Math.abs(ours / printed - 1) * 100,
    allowed: 1,
  };
});

const cylinder: readonly Case[] = referenceTable('laminar-long-cylinder', 'solution.csv', ['xi', 'mean']).map(
  (row) => {
    const xi = cell(row, 'xi').value;
    const R = 2.73e6;
    const ours = laminarCylinder(R, (xi * Math.sqrt(R)) / 8) * Math.sqrt(R);
    return {
      name: `xi ${cell(row, 'xi').text}`,
      error: Math.abs(ours / cell(row, 'mean').value - 1) * 100,
      allowed: 1,
    };
  },
);

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'Friction of a smooth plate',
    source: 'Schlichting, Boundary-Layer Theory',
    unit: 'half of the last printed digit',
    cases: lawCases,
    notCovered: 'rough surfaces',
  },
  {
    kind: 'law',
    claim: 'The turbulent law against two other published ones',
    source: 'Prandtl and Schlichting; Barrowman, 1967',
    unit: '%',
    cases: spread,
    notCovered: 'Reynolds numbers below 5e5, where vanes are',
  },
  {
    kind: 'law',
    claim: 'Worked friction numbers of plates and short cylinders, and of a late transition',
    source: 'Mandell, Caporaso and Bengen, 1973, chapter 3; Hoerner, chapter 2',
    unit: '%',
    cases: [...examples, ...transition],
    notCovered: 'a cylinder as long as an arrow, in turbulent flow',
  },
  {
    kind: 'law',
    claim: 'Laminar friction of a long thin cylinder',
    source: 'Seban and Bond, 1951, and Kelly, 1954; solved apart',
    unit: '%',
    cases: cylinder,
    notCovered: "the point's pressure field",
  },
];
