import { DomainError } from '../quantities/domain-error.ts';
import { type Metres, si } from '../quantities/quantity.ts';
import type { Arrow, ArrowChoices, ArrowTotals, Assumption, TotalDifference } from './arrow.ts';
import { dragTerms } from './drag/drag.ts';
import { builtUpDrag, constantDrag, tabulatedDrag } from './drag/drag-curve.ts';
import type { DragCurve, FlyingArrow } from './flying-arrow.ts';
import { attitudeOf, liftsFrom } from './lift/attitude.ts';
import { liftingSurfaces } from './lift/lifting.ts';
import { centreOfPressure } from './lift/normal-force.ts';
import { ASSUMED_BALANCE, assumedParts } from './parts/assumed-arrow.ts';
import { requireParts, requireTotals } from './parts/check-parts.ts';
import { frontOfCentre } from './parts/front-of-centre.ts';
import { type MassProperties, massProperties } from './parts/mass-properties.ts';
import type { ArrowParts, Vanes } from './parts/parts.ts';
import { arrowLength, piecesOf } from './parts/pieces.ts';
import { bendingStiffness } from './parts/stiffness.ts';

export interface ArrowDescription {
  readonly parts?: ArrowParts | undefined;
  readonly totals?: ArrowTotals | undefined;
  readonly choices?: ArrowChoices | undefined;
}

/**
 * The arrow from its parts, from measured totals, or from both; where both give the same quantity the measurement is
 * taken and the difference reported. Mass and diameter are the least that is needed.
 *
 * A measured mass scales every piece alike (inertias with it); a measured balance point moves the pieces together, so Iy
 * about it stays.
 *
 * @throws DomainError when neither gives the mass or the diameter, or a size is impossible
 */
export function buildArrow({ parts: listed, totals = {}, choices = {} }: ArrowDescription): Arrow {
  requireTotals(totals);
  if (listed === undefined) return fromTotals(totals, choices);
  const parts = withDiameter(listed, totals.diameter);
  requireParts(parts);
  return fromParts(listed, parts, totals, choices);
}

const withDiameter = (parts: ArrowParts, diameter: Metres | undefined): ArrowParts =>
  diameter === undefined ? parts : { ...parts, shaft: { ...parts.shaft, outerDiameter: diameter } };

function fromParts(listed: ArrowParts, parts: ArrowParts, totals: ArrowTotals, choices: ArrowChoices): Arrow {
  const { shaft, vanes, point } = parts;
  const {
    boundaryLayer = 'transition',
    sideForce = 0,
    shaftSlowsSpin = true,
    liftLossesCounted = true,
  } = choices;
  const pieces = piecesOf(parts);
  const added = massProperties(pieces);
  const mass = measured(added, totals);
  const surfaces = liftingSurfaces(parts, { boundaryLayer, lossesCounted: liftLossesCounted });
  const length = totals.length ?? arrowLength(parts);
  const pressure = centreOfPressure(liftsFrom(0, surfaces));
  const given = givenDrag(totals);
  return {
    flying: {
      mass: mass.mass,
      diameter: shaft.outerDiameter,
      drag: given ?? builtUpDrag(parts, boundaryLayer),
      dragScale: 1,
      attitude: attitudeOf(parts, mass, surfaces, shaftSlowsSpin),
      sideForce,
      balance: mass.balance,
      fletchRadius: fletchRadius(shaft.outerDiameter, vanes),
    },
    parts,
    length,
    frontOfCentre: frontOfCentre(mass.balance, length),
    centreOfPressure: si(pressure),
    staticMargin: si(mass.balance - pressure),
    stiffness: shaft.deflection === undefined ? null : bendingStiffness(shaft.deflection),
    pieces,
    surfaces,
    differences: differences(listed, added, totals),
    assumptions: point.shape === 'fixed_blade' && point.blades === undefined ? ['usual three blades'] : [],
    dragFrom: given === null ? 'parts' : 'given',
    boundaryLayer,
    dragTerms: (layer, reynolds) => dragTerms(parts, layer, reynolds),
  };
}

function fromTotals(totals: ArrowTotals, choices: ArrowChoices): Arrow {
  const { mass, diameter, balance, length } = totals;
  if (mass === undefined)
    throw new DomainError('arrow mass (kg)', Number.NaN, 'measured, or known from the parts');
  if (diameter === undefined)
    throw new DomainError('shaft diameter (m)', Number.NaN, 'measured, or known from the parts');
  const { boundaryLayer = 'transition', sideForce = 0 } = choices;
  const given = givenDrag(totals);
  const stand = assumedParts(diameter);
  const flying: FlyingArrow = {
    mass,
    diameter,
    drag: given ?? builtUpDrag(stand, boundaryLayer),
    dragScale: 1,
    attitude: null,
    sideForce,
    balance: balance ?? ASSUMED_BALANCE,
    fletchRadius: fletchRadius(diameter, stand.vanes),
  };
  const assumptions: Assumption[] = ['vanes of a plain hunting arrow'];
  if (given === null) assumptions.push('drag of a plain hunting arrow');
  if (balance === undefined) assumptions.push('balance of a plain hunting arrow');
  return {
    flying,
    parts: null,
    length: length ?? null,
    frontOfCentre: length === undefined || balance === undefined ? null : frontOfCentre(balance, length),
    centreOfPressure: null,
    staticMargin: null,
    stiffness: null,
    pieces: [],
    surfaces: null,
    differences: [],
    assumptions,
    dragFrom: given === null ? 'assumed' : 'given',
    boundaryLayer,
    dragTerms: given === null ? (layer, reynolds) => dragTerms(stand, layer, reynolds) : null,
  };
}

/** Largest radius of shaft and vanes. */
const fletchRadius = (diameter: Metres, vanes: Vanes | undefined): Metres =>
  si(vanes === undefined ? diameter / 2 : diameter / 2 + vanes.height);

function givenDrag({ dragCoefficient }: ArrowTotals): DragCurve | null {
  if (dragCoefficient === undefined) return null;
  return typeof dragCoefficient === 'number' ? constantDrag(dragCoefficient) : tabulatedDrag(dragCoefficient);
}

function measured(
  added: MassProperties,
  { mass = added.mass, balance = added.balance }: ArrowTotals,
): MassProperties {
  const scale = mass / added.mass;
  return {
    mass,
    balance,
    axialInertia: si(added.axialInertia * scale),
    transverseInertia: si(added.transverseInertia * scale),
  };
}

function differences(
  listed: ArrowParts,
  added: MassProperties,
  totals: ArrowTotals,
): readonly TotalDifference[] {
  const fromListed = {
    mass: added.mass,
    balance: added.balance,
    diameter: listed.shaft.outerDiameter,
    length: arrowLength(listed),
  };
  const whats = ['mass', 'balance', 'diameter', 'length'] as const;
  return whats.flatMap((what) => {
    const value = totals[what];
    return value === undefined || value === fromListed[what]
      ? []
      : [{ what, measured: value, fromParts: fromListed[what] }];
  });
}
