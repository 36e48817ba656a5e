import type { Arrow } from '../../arrow/arrow.ts';
import type { Prior } from '../../calibration/parameters.ts';
import type { Rig } from '../../sight/rig.ts';
import type { SetupFile } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';

/**
 * Below this Reynolds number on the diameter, arrows with smooth points have been measured with either drag.
 * @source reference/arrow-drag
 */
const EITHER_BELOW = 25_000;
/** What target archers call slim: outside, m. @source common practice, no source */
const SLIM = 6e-3;

/**
 * Whether nothing tells if the layer of air along the shaft is laminar: a slim arrow with a smooth point, slow enough, whose drag
 * is built up from its parts and whose file does not say it.
 */
export function isLayerOpen({ arrow: section }: SetupFile, arrow: Arrow, rig: Rig): boolean {
  const { air } = rig.conditions;
  const { diameter } = arrow.flying;
  return (
    arrow.dragFrom === 'parts' &&
    section.boundary_layer === undefined &&
    arrow.parts?.point.shape === 'bullet' &&
    diameter <= SLIM &&
    (air.density * rig.launchSpeed * diameter) / air.viscosity < EITHER_BELOW
  );
}

/** A laminar layer as a factor on the built-up drag: half of it, as sure as the build-up is. @source reference/arrow-drag */
export const LAMINAR_DRAG: Prior = { value: 0.5, sd: 0.5 * defaultOf('arrow.drag_relative_sd') };
