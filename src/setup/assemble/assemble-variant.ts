import type { Arrow } from '../../arrow/arrow.ts';
import type { Estimate } from '../../quantities/estimate.ts';
import { type Kilograms, type MetresPerSecond, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import type { BuildEntry, SetupFile } from '../schema/schema.ts';
import { type Assembly, assemble } from './assemble.ts';
import { assembleLaunch } from './assemble-launch.ts';
import { dragSd } from './drag-sd.ts';
import { mergeBuild } from './merge-build.ts';
import { massSd, type Own, ownOf, variantArrow } from './variant-arrow.ts';

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

/** One entry of `builds:`. @throws DomainError when its parts contradict each other */
export function assembleBuild(setup: SetupFile, base: Assembly, build: BuildEntry): Variant {
  return assembleVariant(setup, base, mergeBuild(setup, build), { name: build.name, own: ownOf(build) });
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
