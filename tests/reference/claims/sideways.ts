import { cantEffects } from '../../../src/advice/lean/cant.ts';
import { drift } from '../../../src/advice/lean/drift.ts';
import { leanFor } from '../../../src/advice/lean/lean.ts';
import { settledDrift } from '../../../src/advice/lean/settled-drift.ts';
import { calm } from '../../../src/atmosphere/wind.ts';
import { fitLateral } from '../../../src/calibration/sideways/lateral-fit.ts';
import type { FlightConditions } from '../../../src/flight/conditions.ts';
import { launchFromEye } from '../../../src/flight/launch.ts';
import { fly } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { huntingArrow } from '../../unit/flight/hunting-arrow.ts';
import { conditionsOf, pointArrow, spinningArrow } from '../../unit/flight/point-arrow.ts';
import { inventedRig } from '../../unit/sight/invented-rig.ts';
import type { Claim } from '../claim.ts';
import { cell, type Printed, type Row, referenceTable } from '../table.ts';

const INCH = 0.0254; // m
const YARD = 0.9144; // m
const DEGREE = Math.PI / 180;
const POUND = 0.45359237; // kg

/** A bow whose arrow starts at the eye, as the outside figures have it. */
const fromEye = (conditions: FlightConditions, speed: number): Rig => ({
  ...inventedRig,
  conditions,
  launchSpeed: si(speed),
  geometry: { ...inventedRig.geometry, peepHeight: si(0), freeFlight: si(0) },
});
const hunting = (more: Partial<FlightConditions> = {}): Rig =>
  fromEye(conditionsOf(spinningArrow, more), 280 * 0.3048);
const course = [20, 40, 60, 80, 100].map((yards) => yards * YARD);

const FLAT_FIRE = 0.02; // of the value: the launch rises a few degrees
const targetBow = fromEye(conditionsOf(pointArrow(0.02, 0.0055, 1.5)), 57);
const targetRows = referenceTable('bow-cant', 'target-arrow.csv', ['cant_deg', 'range_m', 'what', 'value_m']);
const huntingRows = referenceTable('bow-cant', 'hunting-bow.csv', ['range_yd', 'side_per_degree_in']);

function missOf(rig: Rig, cant: number, range: number): { side: number; low: number } {
  const [effect] = cantEffects(rig, [cant], [range]);
  const row = effect?.rows[0];
  return { side: row?.lateral ?? Number.NaN, low: -(row?.vertical ?? Number.NaN) };
}

const cant: Claim = {
  kind: 'program',
  claim: 'Sideways and downward miss of a canted bow',
  source: 'independent computations, 2 sets',
  unit: 'm',
  cases: [
    ...targetRows.map((row) => {
      const [degrees, range, value] = [cell(row, 'cant_deg'), cell(row, 'range_m'), cell(row, 'value_m')];
      const what = cell(row, 'what').text;
      const found = missOf(targetBow, degrees.value * DEGREE, range.value);
      return {
        name: `target arrow, ${degrees.text} deg at ${range.text} m, ${what}`,
        error: Math.abs((what === 'side' ? found.side : found.low) - value.value),
        allowed: value.half + FLAT_FIRE * value.value,
      };
    }),
    ...huntingRows.map((row) => {
      const [range, side] = [cell(row, 'range_yd'), cell(row, 'side_per_degree_in')];
      return {
        name: `hunting bow, 1 deg at ${range.text} yd`,
        error: Math.abs(missOf(hunting(), DEGREE, range.value * YARD).side - side.value * INCH),
        allowed: (side.half + FLAT_FIRE * side.value) * INCH,
      };
    }),
  ],
  notCovered: 'measurement: these are geometry',
};

const lagCases: Readonly<Record<string, { conditions: FlightConditions; speed: number }>> = (() => {
  const windy = (mass: number, diameter: number, drag: number) =>
    conditionsOf(pointArrow(mass, diameter, drag), { wind: { ...calm, across: si(3) } });
  return {
    A: { conditions: windy(0.02, 0.0055, 1.5), speed: 57 },
    A2: { conditions: windy(0.02, 0.0055, 2.6), speed: 57 },
    B: { conditions: windy(0.06 * POUND, 0.0065, 2), speed: 85 },
  };
})();

const lag: Claim = {
  kind: 'program',
  claim: 'Drift of three arrows in a crosswind, to 91 m',
  source: 'independent integration of the equations of motion; the lag rule of Didion',
  unit: '%',
  cases: referenceTable('crosswind-lag', 'drift.csv', ['case', 'range_m', 'drift_m']).map((row) => {
    const [which, range, value] = [cell(row, 'case').text, cell(row, 'range_m'), cell(row, 'drift_m')];
    const { conditions, speed } = lagCases[which] ?? { conditions: targetBow.conditions, speed: Number.NaN };
    const [state] = fly(conditions, launchFromEye(si(speed), si(0)), [range.value]);
    return {
      name: `${which} at ${range.text} m`,
      error: 100 * Math.abs((state?.lateral ?? Number.NaN) / value.value - 1),
      // The rule takes the horizontal speed, the flight all of it: below 0.1 % for flat shots.
      allowed: 0.1 + (100 * value.half) / value.value,
    };
  }),
  notCovered: 'an arrow that turns into the wind; gusts',
};

const rigidFigures = referenceTable('rigid-body-figures', 'figures.csv', ['figure', 'low', 'high', 'unit']);
const sidewaysFigures = referenceTable('sideways-figures', 'figures.csv', ['figure', 'value', 'unit']);
function figure(rows: readonly Row[], name: string, column: string): Printed {
  const row = rows.find((candidate) => cell(candidate, 'figure').text === name);
  if (row === undefined) throw new Error(`no figure "${name}"`);
  return cell(row, column);
}

const byRange = drift(hunting(), course);
const gyroscopic: Claim = {
  kind: 'program',
  claim: 'Drift of a right helical to the left by the gyroscopic effect, 20 to 100 yd',
  source: 'independent six-degree-of-freedom program',
  unit: 'in',
  cases: byRange.map(({ range, gyroscopic: found }) => {
    const yards = Math.round(range / YARD);
    const value = figure(rigidFigures, `gyroscopic drift at ${yards} yd`, 'low');
    return {
      name: `${yards} yd`,
      error: Math.abs(-found / INCH - value.value),
      // The print, and 10 %: its spin has settled before the launch (SOURCE.md), ours takes 9 yd to grow.
      allowed: value.half + 0.1 * value.value,
    };
  }),
  notCovered: 'measurement: no measured drift of a spinning arrow was found in print',
};

const settledHunting = settledDrift(hunting().conditions, si(85.344));
/** The figure leaves the slowing of the spin by the shaft out. */
const built = huntingArrow({ choices: { shaftSlowsSpin: false } }).flying;
const settledBuilt = settledDrift(conditionsOf(built), si(85.344));
/** The lean of the travel needs a sight above the arrow. */
const sighted: Rig = { ...hunting(), geometry: inventedRig.geometry };
const ratio = figure(sidewaysFigures, 'gyroscopic drift over drop settled', 'value');
const ceiling = figure(rigidFigures, 'side force drift over drop settled', 'low');
const lean = figure(sidewaysFigures, 'lean for the gyroscopic drift', 'value');
const north = { latitude: si<'rad'>(Math.PI / 4), azimuth: null };
const earth = figure(sidewaysFigures, 'Earth at 45 deg north at 100 yd', 'value');

const closedForms: Claim = {
  kind: 'program',
  claim: 'Settled drift over drop, and the lean that cancels it',
  source: 'independent six-degree-of-freedom program',
  unit: 'of the value',
  cases: [
    {
      name: 'gyroscopic drift over drop',
      error: Math.abs(-(settledHunting?.gyroscopic ?? Number.NaN) / ratio.value - 1),
      allowed: ratio.half / ratio.value,
    },
    {
      name: 'shaft force at its ceiling over drop',
      error: Math.abs(-(settledBuilt?.shaftForceCeiling ?? Number.NaN) / ceiling.value - 1),
      // Whether the point counts as shaft is not printed: it would add 15 %.
      allowed: 0.11,
    },
    {
      name: 'lean of the travel over 20 to 100 yd',
      error: Math.abs(leanFor(sighted, fitLateral(sighted, []), course).lean / DEGREE / lean.value - 1),
      allowed: lean.half / lean.value,
    },
  ],
  notCovered: 'the shaft force itself, which has not been measured on arrows',
};

const coriolis: Claim = {
  kind: 'program',
  claim: "Deflection by the Earth's rotation at 45 degrees north, 100 yd",
  source: 'independent six-degree-of-freedom program',
  unit: 'in',
  cases: [
    {
      name: '100 yd',
      error: Math.abs((drift(hunting({ place: north }), course).at(-1)?.coriolis ?? 0) / INCH - earth.value),
      allowed: earth.half,
    },
  ],
  notCovered: 'other latitudes',
};

export const claims: readonly Claim[] = [cant, lag, gyroscopic, closedForms, coriolis];
