import type { Arrow } from '../../arrow/arrow.ts';
import { changedArrow } from '../../arrow/changed-arrow.ts';
import type { Estimate } from '../../quantities/estimate.ts';
import { GRAIN } from '../../quantities/exact.ts';
import { type Kilograms, type MetresPerSecond, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import type { ArrowSection, BuildEntry, SetupFile } from '../schema/schema.ts';
import { type Assembly, assemble } from './assemble.ts';
import { assembleArrow } from './assemble-arrow.ts';
import { assembleLaunch } from './assemble-launch.ts';
import { dragSd } from './drag-sd.ts';
import { mergeBuild } from './merge-build.ts';
import { statedSd } from './stated-sd.ts';

/** An arrow that differs from the one the file is about, in the file's bow. */
export interface Variant {
  readonly name: string;
  readonly arrow: Arrow;
  readonly rig: Rig;
  /** Chronographed with this arrow; null when it follows from the bow's energy. */
  readonly speed: Estimate<MetresPerSecond> | null;
  /** Relative, of a drag coefficient given for this arrow; null when it follows from the base's. */
  readonly ownDragSd: number | null;
  /** Of its mass: what the scale left, 0 for the base's, or what parts that nobody put on a scale together come to. */
  readonly massSd: Kilograms;
}

/** What was measured on the variant itself, and does not come from the base. */
export interface Own {
  readonly mass?: boolean;
  readonly balance?: boolean;
  readonly length?: boolean;
  readonly drag?: boolean;
  readonly speed?: boolean;
}

/** One entry of `builds:`. @throws DomainError when its parts contradict each other */
export function assembleBuild(setup: SetupFile, base: Assembly, build: BuildEntry): Variant {
  const own = build.arrow ?? {};
  return assembleVariant(setup, base, mergeBuild(setup, build), {
    name: build.name,
    own: {
      mass: own.mass !== undefined,
      balance: own.balance !== undefined,
      length: own.length !== undefined,
      drag: own.drag_coefficient !== undefined,
      speed: build.launch?.speed !== undefined,
    },
  });
}

/**
 * A complete setup that differs from the base in some keys: its arrow is the base's arrow changed, so that what was weighed
 * beyond the parts stays, and its bow, air and sight are its own.
 *
 * @throws DomainError when its parts contradict each other
 */
export function assembleVariant(
  setup: SetupFile,
  base: Assembly,
  variant: SetupFile,
  { name, own }: { readonly name: string; readonly own: Own },
): Variant {
  const arrow = variantArrow(setup.arrow, base.arrow, variant.arrow, own);
  // Marks and scale belong to the base arrow; only then is this arrow put in.
  const bow = assemble({ ...variant, arrow: setup.arrow }).rig;
  return {
    name,
    arrow,
    rig: withArrow(bow, base.arrow, arrow),
    speed: own.speed === true ? assembleLaunch(variant, arrow, bow.conditions.air) : null,
    ownDragSd: own.drag === true ? dragSd(variant.arrow) : null,
    massSd: massSd(variant.arrow, own, arrow.flying.mass === base.arrow.flying.mass),
  };
}

/**
 * A build put together from the weights of its parts.
 * @source common practice, no source: shafts of a dozen and points differ so much
 */
const UNWEIGHED = 4 * GRAIN;

function massSd(section: ArrowSection, own: Own, asBase: boolean): Kilograms {
  if (own.mass === true) return statedSd.buildMass(section) ?? si(0);
  return si(asBase ? 0 : UNWEIGHED);
}

/** Free flight begins where the arrow's own balance point is. */
function withArrow(rig: Rig, before: Arrow, { flying }: Arrow): Rig {
  return {
    ...rig,
    conditions: { ...rig.conditions, arrow: flying },
    geometry: {
      ...rig.geometry,
      freeFlight: si(rig.geometry.freeFlight - before.flying.balance + flying.balance),
    },
  };
}

function variantArrow(base: ArrowSection, baseArrow: Arrow, section: ArrowSection, own: Own): Arrow {
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
