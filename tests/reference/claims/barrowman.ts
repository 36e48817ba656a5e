import { NOSE_PLACE } from '../../../src/arrow/lift/lifting.ts';
import {
  centreOfPressure,
  finRingSlope,
  liftMoments,
  NOSE_SLOPE,
} from '../../../src/arrow/lift/normal-force.ts';
import { finCentreOfPressure } from '../../../src/arrow/lift/trapezoid-fin.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, type Row, referenceTable } from '../table.ts';

const folder = 'barrowman';
const source = 'Barrowman and Barrowman, NARAM-8, 1966; Barrowman, TIR-33, 1970';
const fins = referenceTable(folder, 'fins.csv', [
  'set',
  'reference_in',
  'count',
  'root_in',
  'tip_in',
  'height_in',
  'sweep_in',
  'root_front_in',
  'radius_in',
  'slope',
  'place_in',
  'own_slope',
  'own_place_in',
]);
const noses = referenceTable(folder, 'noses.csv', ['nose', 'length_in', 'place_in']);
const totals = referenceTable(folder, 'totals.csv', [
  'rocket',
  'nose',
  'sets',
  'extra_slope',
  'extra_place_in',
  'slope',
  'place_in',
  'own_slope',
  'own_place_in',
]);

/** Slope and station behind the nose tip, in inches; the formulas do not mind the unit of length. */
function finLift(row: Row) {
  const value = (column: string) => cell(row, column).value;
  const fin = {
    rootChord: value('root_in'),
    tipChord: value('tip_in'),
    height: value('height_in'),
    sweep: value('sweep_in'),
    rootRadius: value('radius_in'),
  };
  const section = (Math.PI / 4) * value('reference_in') ** 2;
  return {
    slope: finRingSlope(fin, value('count'), section),
    place: value('root_front_in') + finCentreOfPressure(fin),
  };
}
const find = (rows: readonly Row[], column: string, text: string): Row => {
  const row = rows.find((candidate) => cell(candidate, column).text === text);
  if (row === undefined) throw new Error(`${folder}: no ${column} ${text}`);
  return row;
};
const nosePlace = (row: Row) => NOSE_PLACE.bullet * cell(row, 'length_in').value;

function whole(row: Row) {
  const sets = cell(row, 'sets').text.split(';');
  const lifts = [
    { slope: NOSE_SLOPE, place: nosePlace(find(noses, 'nose', cell(row, 'nose').text)) },
    { slope: cell(row, 'extra_slope').value, place: cell(row, 'extra_place_in').value },
    ...sets.map((set) => finLift(find(fins, 'set', set))),
  ];
  return { slope: liftMoments(lifts)[0], place: centreOfPressure(lifts) };
}

const compare = (
  name: string,
  ours: { slope: number; place: number },
  row: Row,
  prefix: '' | 'own_',
  allowed: number,
): readonly Case[] => [
  {
    name: `${name} slope`,
    error: Math.abs(ours.slope / cell(row, `${prefix}slope`).value - 1) * 100,
    allowed,
  },
  {
    name: `${name} centre of pressure`,
    error: Math.abs(ours.place / cell(row, `${prefix}place_in`).value - 1) * 100,
    allowed,
  },
];
const all = (prefix: '' | 'own_', allowed: number): readonly Case[] => [
  ...fins.flatMap((row) => compare(cell(row, 'set').text, finLift(row), row, prefix, allowed)),
  ...totals.flatMap((row) => compare(`${cell(row, 'rocket').text} whole`, whole(row), row, prefix, allowed)),
];

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'Normal force and centre of pressure of four worked examples, as printed',
    source,
    unit: '%',
    cases: [
      ...all('', 1),
      ...noses.map((row) => ({
        name: `${cell(row, 'nose').text} nose`,
        error: Math.abs(nosePlace(row) / cell(row, 'place_in').value - 1) * 100,
        allowed: 1,
      })),
    ],
    notCovered: 'arrows: no measured centre of pressure could be read',
  },
  {
    kind: 'law',
    claim: 'The same examples computed apart, to more digits',
    source: `${source}; computed apart`,
    unit: '%',
    cases: all('own_', 0.05),
    notCovered: 'an error of the method',
  },
];
