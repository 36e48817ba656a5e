import { buildArrow } from '../../../src/arrow/build.ts';
import { arrowBeam, type Beam, firstBending } from '../../../src/arrow/parts/beam.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const folder = 'beam-vibration';
const bare: Beam = { length: si(1), stiffness: si(1), massPerLength: si(1), loads: [] };
const HEAVY = si<'kg'>(1e7);
const ends: Readonly<Record<string, Beam['loads']>> = {
  'free and free': [],
  'heavy mass and free': [{ place: 0, mass: HEAVY }],
  'heavy mass and heavy mass': [
    { place: 0, mass: HEAVY },
    { place: 1, mass: HEAVY },
  ],
};

const waves: readonly Case[] = referenceTable(folder, 'wave-numbers.csv', [
  'ends',
  'wave_number_times_length',
  'node_1',
  'node_2',
]).flatMap((row) => {
  const name = cell(row, 'ends').text;
  const { frequency, nodes } = firstBending({ ...bare, loads: ends[name] ?? [] });
  const printed = cell(row, 'wave_number_times_length');
  const inner = ['node_1', 'node_2']
    .map((column) => cell(row, column))
    .filter(({ value }) => value > 0 && value < 1);
  return [
    { name, error: Math.abs(Math.sqrt(2 * Math.PI * frequency) - printed.value), allowed: 2 * printed.half },
    ...inner.map((node) => ({
      name: `${name}, node at ${node.text}`,
      error: Math.min(...nodes.map((place) => Math.abs(place - node.value))),
      allowed: 2 * node.half,
    })),
  ];
});

/** A common target arrow, ours: 28.5 in of 500 spine at 6.5 gr/in with a 110 gr point. */
const inches = (count: number) => si<'m'>(count * 0.0254);
const grains = (count: number) => si<'kg'>(count * 64.79891e-6);
const target = arrowBeam(
  buildArrow({
    parts: {
      shaft: {
        length: inches(28.5),
        outerDiameter: si(0.0055),
        innerDiameter: si(0.004),
        massPerLength: si((6.5 * 64.79891e-6) / 0.0254),
        deflection: inches(0.5),
      },
      point: { mass: grains(110), shape: 'bullet', length: si(0.02) },
      nock: { mass: grains(10) },
      vanes: {
        count: 3,
        mass: grains(1.5),
        rootChord: si(0.045),
        tipChord: si(0.02),
        height: si(0.0085),
        thickness: si(0.4e-3),
        fromNock: si(0.02),
        angle: si(0.02),
        turn: 'right',
      },
    },
  }),
);

function targetArrow(): Readonly<Record<string, number>> {
  if (target === null) throw new Error('the target arrow is no beam');
  const { frequency, nodes } = firstBending(target);
  const [rear = Number.NaN, front = Number.NaN] = nodes;
  return {
    frequency_Hz: frequency,
    node_behind_point_mm: 1000 * (target.length - front),
    node_ahead_of_nock_mm: 1000 * rear,
  };
}

const bent = targetArrow();
const arrow = referenceTable(folder, 'target-arrow.csv', ['what', 'value', 'allowed']).map((row): Case => {
  const what = cell(row, 'what').text;
  return {
    name: what,
    error: Math.abs((bent[what] ?? Number.NaN) - cell(row, 'value').value),
    allowed: cell(row, 'allowed').value,
  };
});

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'First bending of a free beam, bare and with heavy ends',
    source: 'Blevins, Formulas for Natural Frequency and Mode Shape, 1979 (from memory)',
    unit: 'wave number times length; node as a share of the length',
    cases: waves,
    notCovered: 'shear and rotary inertia',
  },
  {
    kind: 'measured',
    claim: 'First bending frequency of a target arrow',
    source: 'Park, Bow International',
    unit: 'Hz',
    cases: arrow.filter(({ name }) => name.endsWith('_Hz')),
    notCovered: "the measured arrow's own build (not published); hunting arrows",
  },
  {
    kind: 'measured',
    claim: 'Where a bending target arrow stands still',
    source: 'Park, Bow International',
    unit: 'mm',
    cases: arrow.filter(({ name }) => name.endsWith('_mm')),
    notCovered: "the measured arrow's own build (not published)",
  },
];
