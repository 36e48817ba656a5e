import { plateFriction } from '../../../src/arrow/drag/drag-term.ts';
import { laminarPlate, mixedFriction, turbulentPlate } from '../../../src/arrow/drag/friction.ts';
import type { Claim } from '../claim.ts';
import { cell, type Row, referenceTable } from '../table.ts';

const folder = 'javelin-drag';
const source = 'Mandell, Caporaso and Bengen, 1973, chapter 3';
/** The source prints three digits of each term; its totals follow from its terms to 0.3 %. */
const ALLOWED = 0.5;

const CRITICAL = 5e5;
/** A plate laminar to the critical Reynolds number. */
const plate = (R: number) =>
  mixedFriction(
    CRITICAL / R,
    (share) => laminarPlate(share * R),
    (share) => turbulentPlate(share * R),
  );

const body = { length: 0.3175, diameter: 0.0193, wetted: 59.7, section: 2.92e-4 };
const fins = { area: 63e-4, chord: 0.0302, thickness: 0.079 * 0.0302 };
const perMetre = 60 / 1.495e-5;

function javelin(state: string) {
  const R = perMetre * body.length;
  const slender = body.length / body.diameter;
  const friction = state === 'turbulent' ? turbulentPlate(R) : plate(R);
  const forebody = friction * body.wetted * (1 + 60 / slender ** 3 + 0.0025 * slender);
  const base = 0.029 / Math.sqrt(forebody);
  const finDrag =
    plateFriction(fins.area, fins.thickness, fins.chord, plate(perMetre * fins.chord)) / body.section;
  return { body_friction: friction, total: forebody + base + finDrag };
}

function generic(R: number) {
  const forebody = 82.8 * plate(R);
  return forebody + 0.0149 / Math.sqrt(forebody) + 46.4 * plate(R / 10.24);
}

const off = (name: string, ours: number, row: Row, column: string) => ({
  name,
  error: Math.abs(ours / cell(row, column).value - 1) * 100,
  allowed: ALLOWED,
});

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'Friction, fin and whole drag of a worked vehicle',
    source,
    unit: '%',
    cases: referenceTable(folder, 'javelin.csv', [
      'state',
      'body_friction',
      'forebody',
      'base',
      'fins',
      'total',
    ]).flatMap((row) => {
      const state = cell(row, 'state').text;
      const ours = javelin(state);
      return [
        off(`${state} friction`, ours.body_friction, row, 'body_friction'),
        off(`${state} total`, ours.total, row, 'total'),
      ];
    }),
    notCovered: "form factor and base are the source's, evaluated by the test; an arrow uses others",
  },
  {
    kind: 'law',
    claim: 'Drag of a generic vehicle at eleven Reynolds numbers',
    source: `${source}, table 6`,
    unit: '%',
    cases: referenceTable(folder, 'generic.csv', ['reynolds', 'total']).map((row) =>
      off(`R ${cell(row, 'reynolds').text}`, generic(cell(row, 'reynolds').value), row, 'total'),
    ),
    notCovered: 'its coefficients are inputs; the friction laws are ours',
  },
];
