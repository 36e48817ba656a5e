import { finSlope } from '../../../src/arrow/lift/normal-force.ts';
import {
  bodyInterference,
  dampingInterference,
  forcingInterference,
  NO_INTERFERENCE,
  type RollInterference,
  spinPerMetre,
  spinUp,
} from '../../../src/arrow/lift/spin.ts';
import { chordRadiusSquared, finArea, type TrapezoidFin } from '../../../src/arrow/lift/trapezoid-fin.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, type Row, referenceTable } from '../table.ts';

const MM = 1e-3;
const INCH = 0.0254;
const YARD = 0.9144;
const RADIAN = Math.PI / 180;

const digits = (ours: number, { value, half }: { value: number; half: number }) =>
  Math.abs(ours - value) / half;

const forcing: readonly Case[] = referenceTable('roll-interference', 'forcing.csv', [
  'span_ratio',
  'factor',
]).map((row) => ({
  name: `canted fins, span ratio ${cell(row, 'span_ratio').text}`,
  error: digits(forcingInterference(cell(row, 'span_ratio').value), cell(row, 'factor')),
  allowed: 1,
}));
const damping: readonly Case[] = referenceTable('roll-interference', 'damping.csv', [
  'span_ratio',
  'taper',
  'factor',
]).map((row) => ({
  name: `spinning fins, span ratio ${cell(row, 'span_ratio').text}`,
  error: digits(
    dampingInterference(cell(row, 'span_ratio').value, cell(row, 'taper').value),
    cell(row, 'factor'),
  ),
  allowed: 1,
}));

const vanes = referenceTable('spin-per-metre', 'vanes.csv', [
  'root_mm',
  'tip_mm',
  'height_mm',
  'radius_mm',
  'angle_deg',
  'area_mm2',
  'slope',
  'integral_m4',
  'spin_radpm',
]);
/** The table's slopes are of vanes with an upright rear edge. */
const vaneOf = (row: Row): TrapezoidFin => {
  const value = (column: string) => cell(row, column).value * MM;
  const [rootChord, tipChord] = [value('root_mm'), value('tip_mm')];
  return {
    rootChord,
    tipChord,
    height: value('height_mm'),
    sweep: rootChord - tipChord,
    rootRadius: value('radius_mm'),
  };
};
const vaneCases: readonly Case[] = vanes.flatMap((row, i) => {
  const fin = vaneOf(row);
  const angle = cell(row, 'angle_deg').value * RADIAN;
  const relative = (name: string, ours: number, column: string, unit = 1) => ({
    name: `vane ${i + 1} ${name}`,
    error: Math.abs((ours * unit) / cell(row, column).value - 1) * 100,
    allowed: 0.1,
  });
  return [
    relative('area', finArea(fin), 'area_mm2', 1e6),
    relative('slope', finSlope(fin, finArea(fin)), 'slope'),
    relative('integral', chordRadiusSquared(fin), 'integral_m4'),
    relative('spin', spinPerMetre(fin, angle), 'spin_radpm'),
  ];
});

const HUNTING_VANE: TrapezoidFin = {
  rootChord: 2.1 * INCH,
  tipChord: 0.9 * INCH,
  height: 0.5 * INCH,
  sweep: 1.2 * INCH,
  rootRadius: 0.1225 * INCH,
};
const DENSITY = 1.225;
/** L of dp/dx = (w' V - p) / L, in m. */
const spinLength = (roll: RollInterference) =>
  spinUp(HUNTING_VANE, 3, finSlope(HUNTING_VANE, finArea(HUNTING_VANE)), 2.832e-7, roll) / DENSITY;
const withBody = bodyInterference(HUNTING_VANE);
/** The arrow slows as exp(-k x), so its spin settles at w' V / (1 - k L); see SOURCE.md for the rows this concerns. */
const slowing = (DENSITY * 2.5 * Math.PI * HUNTING_VANE.rootRadius ** 2) / (2 * 450 * 64.79891e-6);
const lag = 1 / (1 - slowing * spinLength(withBody));
const ours: Readonly<Record<string, number>> = {
  spin_strips_radpm: spinPerMetre(HUNTING_VANE, 3 * RADIAN),
  spin_with_body_radpm: spinPerMetre(HUNTING_VANE, 3 * RADIAN, withBody) * lag,
  ninety_percent_strips_yd: (Math.LN10 * spinLength(NO_INTERFERENCE)) / YARD,
  ninety_percent_with_body_yd: (Math.LN10 * spinLength(withBody) * lag) / YARD,
};
const arrowCases: readonly Case[] = referenceTable('spin-per-metre', 'arrow.csv', ['quantity', 'value']).map(
  (row) => {
    const quantity = cell(row, 'quantity').text;
    return { name: quantity, error: digits(ours[quantity] ?? Number.NaN, cell(row, 'value')), allowed: 1 };
  },
);

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'Body interference of canted and of spinning fins',
    source: 'Barrowman, 1967, equations 3-41 and 3-45; computed apart',
    unit: 'half of the last printed digit',
    cases: [...forcing, ...damping],
    notCovered: "the boundary layer in which a vane's root stands",
  },
  {
    kind: 'law',
    claim: 'Vane area, slope, roll integral and settled spin',
    source: 'Barrowman, 1967, one slope on both sides; computed apart',
    unit: '%',
    cases: vaneCases,
    notCovered: 'a measured spin: none could be read',
  },
  {
    kind: 'program',
    claim: 'Spin and its growth for a common hunting arrow',
    source: 'an independent six-degree-of-freedom program',
    unit: 'half of the last printed digit',
    cases: arrowCases,
    notCovered: 'a measured spin: none could be read',
  },
];
