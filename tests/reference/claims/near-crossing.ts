import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { conditionsOf, pointArrow } from '../../unit/flight/point-arrow.ts';
import { inventedRig } from '../../unit/sight/invented-rig.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const INCH = 0.0254; // m
const YARD = 0.9144; // m
const GRAIN = 64.79891e-6; // kg
const g = 9.80665; // m/s2
const SPEED = 280 * 0.3048; // m/s

/** The bow of the figures: its arrow starts below the eye. */
const rigOf = (peep: number, drag: number): Rig => ({
  ...inventedRig,
  conditions: conditionsOf(pointArrow(450 * GRAIN, 0.245 * INCH, drag)),
  launchSpeed: si(SPEED),
  geometry: { ...inventedRig.geometry, peepHeight: si(peep), freeFlight: si(0) },
});
const nearOf = (rig: Rig, far: number): number => marksFor(rig, [far]).marks[0]?.nearCrossing ?? Number.NaN;

const rows = referenceTable('near-crossing', 'figures.csv', ['peep_height_in', 'mark_yd', 'near_yd']);

const figures: readonly Case[] = rows.map((row) => {
  const [peep, far, near] = [cell(row, 'peep_height_in'), cell(row, 'mark_yd'), cell(row, 'near_yd')];
  const found = nearOf(rigOf(peep.value * INCH, 2.5), far.value * YARD) / YARD;
  return { name: `peep height ${peep.text} in`, error: Math.abs(found - near.value) / near.half, allowed: 1 };
});

/** What drag adds to the drop of a flat shot, as a factor: (exp(2kx) - 1 - 2kx)/(2 k^2 x^2). */
function added(drag: number, range: number): number {
  const kx = ((1.225 * drag * Math.PI * (0.245 * INCH) ** 2) / (8 * 450 * GRAIN)) * range;
  return kx === 0 ? 1 : (Math.exp(2 * kx) - 1 - 2 * kx) / (2 * kx * kx);
}

const rule: readonly Case[] = [0, 2.5].flatMap((drag) =>
  rows.flatMap((row) => {
    const peep = cell(row, 'peep_height_in');
    return [30, 50, 100].map((yards) => {
      const far = yards * YARD;
      const product = nearOf(rigOf(peep.value * INCH, drag), far) * far * added(drag, far);
      return {
        name: `drag coefficient ${drag}, peep height ${peep.text} in, ${yards} yd`,
        error: 100 * Math.abs(product / ((2 * peep.value * INCH * SPEED ** 2) / g) - 1),
        // The rule is of a level shot: the launch rises up to 4 degrees (0.7 % in the cube of its cosine), and the arrow starts
        // up to 1 cm ahead of the eye (0.3 % of the nearest crossing).
        allowed: 1,
      };
    });
  }),
);

export const claims: readonly Claim[] = [
  {
    kind: 'program',
    claim: 'Near range at which the mark of 50 yd hits too',
    source: 'an independent six-degree-of-freedom program (computed)',
    unit: 'half of the last printed digit',
    cases: figures,
    notCovered: 'bent arrows: close up an arrow has not settled, and the figures are of its balance point',
  },
  {
    kind: 'law',
    claim: 'Near range times far range is twice peep height times launch speed squared over gravity',
    source: 'product of the roots of the parabola; drag by the closed form of a flat shot',
    unit: '%',
    cases: rule,
    notCovered: 'the rule as it is said, without drag: 5 % off at 50 yd, 10 % at 100 yd',
  },
];
