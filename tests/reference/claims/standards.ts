import { frontOfCentre } from '../../../src/arrow/parts/front-of-centre.ts';
import { bendingStiffness, SPINE_TEST } from '../../../src/arrow/parts/stiffness.ts';
import { massPerDraw, RATING_MASS_PER_DRAW } from '../../../src/bow/mass-per-draw.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const INCH = 0.0254;
const GRAIN = 64.79891e-6;
const POUND_FORCE = 4.4482216152605;
const digits = (ours: number, { value, half }: { value: number; half: number }) =>
  Math.abs(ours - value) / half;

/** 2 lb on 26 in, the older rule. Common practice, from memory. */
const OLD_SPINE_TEST = { span: si<'m'>(26 * INCH), load: 2 * 0.45359237 * 9.80665 };
/** Deflections of one shaft are as the stiffnesses that equal deflections would mean. */
const oldToNew = bendingStiffness(si(0.01), SPINE_TEST) / bendingStiffness(si(0.01), OLD_SPINE_TEST);

export const claims: readonly Claim[] = [
  {
    kind: 'definition',
    claim: 'Front-of-centre from the balance point',
    source: 'ASTM F1435',
    unit: 'half of the last printed digit',
    cases: referenceTable('balance-point', 'examples.csv', [
      'balance_in',
      'length_in',
      'front_of_centre_percent',
    ]).map((row) => ({
      name: `balance ${cell(row, 'balance_in').text} in of ${cell(row, 'length_in').text} in`,
      error: digits(
        100 *
          frontOfCentre(si(cell(row, 'balance_in').value * INCH), si(cell(row, 'length_in').value * INCH)),
        cell(row, 'front_of_centre_percent'),
      ),
      allowed: 1,
    })),
    notCovered: 'the formula is from memory; the abstract agrees',
  },
  {
    kind: 'definition',
    claim: 'Shaft stiffness from static spine',
    source: 'ASTM F2031 span and load; beam on two supports',
    unit: '%',
    cases: [
      ...referenceTable('static-spine', 'stiffness.csv', ['spine', 'stiffness_Nm2']).map((row) => ({
        name: `spine ${cell(row, 'spine').text}`,
        error:
          Math.abs(
            bendingStiffness(si((cell(row, 'spine').value / 1000) * INCH)) /
              cell(row, 'stiffness_Nm2').value -
              1,
          ) * 100,
        allowed: 0.1,
      })),
      ...referenceTable('static-spine', 'ratio.csv', ['ratio']).map((row) => ({
        name: 'present over old deflection',
        error: Math.abs(oldToNew / cell(row, 'ratio').value - 1) * 100,
        allowed: 0.1,
      })),
    ],
    notCovered: 'how stiff the arrow is when shot',
  },
  {
    kind: 'definition',
    claim: 'Arrow mass per pound of draw at which bows are rated',
    source: 'ASTM F1544-11; ATA/BOW-105-2008',
    unit: 'gr',
    cases: referenceTable('rating-condition', 'ratings.csv', ['draw_lbf', 'mass_gr']).map((row) => {
      const draw = cell(row, 'draw_lbf').value * POUND_FORCE;
      const mass = cell(row, 'mass_gr').value * GRAIN;
      const ratio = massPerDraw(si(mass), si(draw)) / RATING_MASS_PER_DRAW;
      return {
        name: `${cell(row, 'draw_lbf').text} lb`,
        error: Math.abs(ratio - 1) * cell(row, 'mass_gr').value,
        // Both documents allow the arrow half a grain.
        allowed: 0.5,
      };
    }),
    notCovered: 'the minimum a bow maker states',
  },
  {
    kind: 'definition',
    claim: 'The same in metric units',
    source: 'ASTM F1544-11',
    unit: 'half of the last printed digit',
    cases: referenceTable('rating-condition', 'metric.csv', ['mass_per_draw_gpN']).map((row) => ({
      name: 'g/N',
      error: digits(RATING_MASS_PER_DRAW * 1000, cell(row, 'mass_per_draw_gpN')),
      allowed: 1,
    })),
    notCovered: 'the minimum a bow maker states',
  },
];
