import type { Arrow } from '../../arrow/arrow.ts';
import { changedArrow } from '../../arrow/changed-arrow.ts';
import { GRAIN } from '../../quantities/exact.ts';
import { type Kilograms, si } from '../../quantities/quantity.ts';
import type { ArrowSection, BuildEntry } from '../schema/schema.ts';
import { assembleArrow } from './assemble-arrow.ts';
import { statedSd } from './stated-sd.ts';

/** What was measured on the variant itself, and does not come from the base. */
export interface Own {
  readonly mass?: boolean;
  readonly balance?: boolean;
  readonly length?: boolean;
  readonly drag?: boolean;
  readonly speed?: boolean;
}

/** What an entry of `builds` measured on its own arrow. */
export function ownOf({ arrow = {}, launch }: BuildEntry): Own {
  return {
    mass: arrow.mass !== undefined,
    balance: arrow.balance !== undefined,
    length: arrow.length !== undefined,
    drag: arrow.drag_coefficient !== undefined,
    speed: launch?.speed !== undefined,
  };
}

/**
 * A build put together from the weights of its parts.
 * @source common practice, no source: shafts of a dozen and points differ so much
 */
const UNWEIGHED = 4 * GRAIN;

/** Standard uncertainty of a variant's mass. */
export function massSd(section: ArrowSection, own: Own, asBase: boolean): Kilograms {
  if (own.mass === true) return statedSd.buildMass(section) ?? si(0);
  return si(asBase ? 0 : UNWEIGHED);
}

/** The base's arrow changed into a variant's, so that what was weighed beyond the parts stays. */
export function variantArrow(base: ArrowSection, baseArrow: Arrow, section: ArrowSection, own: Own): Arrow {
  const { mass, balance, length, drag_coefficient, ...rest } = section;
  const parts = withShaftWeight(rest.parts, baseArrow);
  if (parts === undefined) return assembleArrow(section);
  const listed = assembleArrow({ ...rest, parts });
  if (listed.parts === null) return assembleArrow(section);
  const measured: ArrowSection = {
    diameter: section.diameter,
    ...(own.mass === true && mass !== undefined ? { mass } : {}),
    ...(own.balance === true && balance !== undefined ? { balance } : {}),
    ...(own.length === true && length !== undefined ? { length } : {}),
  };
  return changedArrow({
    base: baseArrow,
    baseDrag: coefficientOf(base),
    parts: listed.parts,
    totals: {
      ...measured,
      dragCoefficient: own.drag === true ? coefficientOf({ ...section }) : undefined,
    },
    choices: { boundaryLayer: listed.boundaryLayer, sideForce: listed.flying.sideForce },
  });
}

const coefficientOf = ({ drag_coefficient: drag }: ArrowSection) =>
  typeof drag === 'object' ? drag.map(({ reynolds, value }) => ({ reynolds, coefficient: value })) : drag;

/** A shaft whose weight followed from the base's total keeps it, whatever else changes. */
function withShaftWeight(parts: ArrowSection['parts'], { parts: base }: Arrow): ArrowSection['parts'] {
  if (parts?.shaft === undefined || parts.shaft.mass_per_length !== undefined || base === null) return parts;
  return { ...parts, shaft: { ...parts.shaft, mass_per_length: base.shaft.massPerLength } };
}
