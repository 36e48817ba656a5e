import { leanFor } from '../../../src/advice/lean/lean.ts';
import { torqueNull } from '../../../src/advice/tuning/torque-null.ts';
import { fitBowEnergy, launchSpeed } from '../../../src/bow/energy.ts';
import { fitLateral } from '../../../src/calibration/sideways/lateral-fit.ts';
import { launchFromEye } from '../../../src/flight/launch.ts';
import { fly, flyer } from '../../../src/flight/trajectory.ts';
import { type MetresPerSecond, si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { impact, pinForHit } from '../../../src/sight/zero.ts';
import { conditionsOf, pointArrow } from '../../unit/flight/point-arrow.ts';
import type { Case, Claim } from '../claim.ts';
import { assembled, assembledBuild, huntingSetup } from '../hunting-setup.ts';
import { cell, referenceTable } from '../table.ts';

const folder = 'common-practice';
const source = 'common practice, no source';

const INCH = 0.0254; // m
const YARD = 0.9144; // m
const GRAIN = 64.79891e-6; // kg

/** The bows that the saying is meant for. */
const BOWS = [
  { speed: 280, peep: 3.5 },
  { speed: 280, peep: 4.6 },
  { speed: 280, peep: 5.5 },
  { speed: 250, peep: 4.6 },
  { speed: 310, peep: 4.6 },
];

const closeStart: readonly Case[] = referenceTable(folder, 'close-start.csv', ['near_yd', 'mark_yd']).flatMap(
  (row) =>
    BOWS.map((bow) => {
      const [mark] = marksFor(assembled(huntingSetup(bow)).rig, [cell(row, 'mark_yd').value * YARD]).marks;
      return {
        name: `${bow.speed} ft/s, peep height ${bow.peep} in`,
        error: Math.abs((mark?.nearCrossing ?? Number.NaN) / YARD - cell(row, 'near_yd').value),
        // A pace for "about", and one for a saying that is the same for every bow: see SOURCE.md.
        allowed: 2,
      };
    }),
);

/** The bow's own launch speed with an arrow of another mass; its virtual mass as a share of its arrow's. */
function speedWith(mass: number, speed: number, other: number, virtualMass: number): MetresPerSecond {
  // The virtual mass as good as known, so that nothing is left to decide.
  const prior = { value: si<'kg'>(virtualMass * mass), logSd: 1e-3 };
  const bow = fitBowEnergy([{ mass: si(mass), speed: si(speed), speedSd: si(0.1) }], prior);
  return launchSpeed(bow, si(other)).value;
}

/** How much lower (in) an arrow with a heavier point hits from the same bow, the sight left alone. */
function lower(grains: number, range: number, virtualMass: number): number {
  const point = `builds: [{ name: other, arrow: { parts: { point: { mass: ${125 + grains} gr } } } }]`;
  const { base, build } = assembledBuild(huntingSetup({}, point));
  const masses = [base.arrow.flying.mass, build.arrow.flying.mass] as const;
  const launchSpeed = speedWith(masses[0], base.rig.launchSpeed, masses[1], virtualMass);
  const other: Rig = { ...build.rig, launchSpeed };
  const pin = pinForHit(base.rig, range, null);
  return -impact(flyer(other.conditions), other, pin, range).height / INCH;
}

/** The same as it was computed: points that leave level from the eye. */
function lowerFromEye(grains: number, range: number, virtualMass: number): number {
  const [mass, speed] = [450 * GRAIN, 280 * 0.3048];
  const heavier = mass + grains * GRAIN;
  const [before, after] = [
    { of: mass, at: si<'m/s'>(speed) },
    { of: heavier, at: speedWith(mass, speed, heavier, virtualMass) },
  ].map(
    ({ of, at }) =>
      fly(conditionsOf(pointArrow(of, 0.245 * INCH, 2.5)), launchFromEye(at, si(0)), [range])[0]?.height ??
      Number.NaN,
  );
  return ((before ?? Number.NaN) - (after ?? Number.NaN)) / INCH;
}

const fiveGrains: readonly Case[] = referenceTable(folder, 'five-grains.csv', [
  'heavier_gr',
  'range_yd',
  'low_in',
]).flatMap((row) => {
  const value = (column: string): number => cell(row, column).value;
  return [0.05, 0.25].flatMap((virtualMass) =>
    [1, -1].map((sign) => {
      const grains = sign * value('heavier_gr');
      return {
        name: `${grains} gr, virtual mass ${100 * virtualMass} % of the arrow`,
        error: Math.abs(lower(grains, value('range_yd') * YARD, virtualMass) - sign * value('low_in')),
        // "About half an inch": nearer to a half than to a quarter or to three quarters.
        allowed: 0.125,
      };
    }),
  );
});

const fiveGrainsComputed: readonly Case[] = referenceTable(folder, 'five-grains-computed.csv', [
  'virtual_mass_percent',
  'low_in',
]).map((row) => {
  const [percent, low] = [cell(row, 'virtual_mass_percent'), cell(row, 'low_in')];
  const ours = lowerFromEye(5, 50 * YARD, percent.value / 100);
  return {
    name: `virtual mass ${percent.text} % of the arrow`,
    error: Math.abs(ours - low.value) / low.half,
    allowed: 1,
  };
});

const course = [20, 30, 40, 50, 60, 70, 80, 90, 100].map((yards) => yards * YARD);
/** The lean that cancels the spin's drift, with or without the shaft's side force. */
const leanOf = (turn: string, sideForce: number): number => {
  const { rig } = assembled(huntingSetup({ turn, sideForce }));
  return leanFor(rig, fitLateral(rig, []), course).lean;
};
const helical: readonly Case[] = referenceTable(folder, 'helical.csv', [
  'turn',
  'other_turn',
  'lean_ratio',
]).flatMap((row) =>
  [0, 0.5].map((sideForce) => ({
    name: `side force of the shaft ${sideForce} of its ceiling`,
    error: Math.abs(
      leanOf(cell(row, 'turn').text, sideForce) / leanOf(cell(row, 'other_turn').text, sideForce) -
        cell(row, 'lean_ratio').value,
    ),
    // Mirror images: what the search for the lean leaves.
    allowed: 1e-6,
  })),
);

/** The bow of the design: 27.25 in from peep to grip, the pin 5.75 in ahead of the grip; a usual archer's arrow, 0.03 in/yd. */
const TORQUED = { gripToPeep: 27.25 * INCH, extension: 5.75 * INCH, arrowSd: (0.03 * INCH) / YARD };

const handTorque: readonly Case[] = referenceTable(folder, 'hand-torque.csv', [
  'range_yd',
  'sight_in',
  'closer_in',
]).flatMap((row) => {
  const value = (column: string): number => cell(row, column).value;
  const aside = (value('closer_in') * INCH) / 2;
  return [1, -1].map((side) => {
    const { null: place } = torqueNull({
      gripToPeep: si(TORQUED.gripToPeep),
      arrowSd: TORQUED.arrowSd,
      shots: [
        {
          extension: si<'m'>(TORQUED.extension),
          range: si<'m'>(value('range_yd') * YARD),
          left: [si<'m'>(-side * aside)],
          right: [si<'m'>(side * aside)],
          turned: null,
        },
      ],
    });
    // Hits that go with the torque ask for a sight farther from the grip (common practice, no source).
    const wanted = side * value('sight_in');
    const found = ((place?.extension ?? Number.NaN) - TORQUED.extension) / INCH;
    return {
      name: `hits ${side > 0 ? 'with' : 'against'} the torque`,
      error: Math.abs(found - wanted),
      // A tenth of the way: the saying is a round number, and what an inch does falls off with the distance to the pin.
      allowed: 0.1 * value('sight_in'),
    };
  });
});

export const claims: readonly Claim[] = [
  {
    kind: 'practice',
    claim: 'Centring at about 3 yd starts the sight near the 50 yd mark',
    source,
    unit: 'yd',
    cases: closeStart,
    notCovered:
      'any one bow: 3.2 yd for a slow one, 4.0 yd for a common one, 4.9 yd for a fast one (SOURCE.md)',
  },
  {
    kind: 'practice',
    claim: 'An arrow 5 gr heavier or lighter moves a 50 yd hit by about half an inch',
    source,
    unit: 'in',
    cases: fiveGrains,
    notCovered: 'bows far from 280 ft/s; a nock that fits otherwise',
  },
  {
    kind: 'program',
    claim: 'The same, to the digits of a computation',
    source: 'an independent computation',
    unit: 'half of the last printed digit',
    cases: fiveGrainsComputed,
    notCovered: 'a measured virtual mass',
  },
  {
    kind: 'practice',
    claim: 'An inch of sight brings hits torqued left and right 5 in closer at 50 yd',
    source,
    unit: 'in',
    cases: handTorque,
    notCovered: 'any one hand: the usual torque was chosen to bear this out (SOURCE.md)',
  },
  {
    kind: 'practice',
    claim: 'A right helical asks for the opposite lean of a left one',
    source,
    unit: 'of the lean',
    cases: helical,
    notCovered: 'how large the lean is: no measured drift could be found',
  },
];
