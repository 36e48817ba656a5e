import type { Arrow } from '../../arrow/arrow.ts';
import { arrowBeam, pushLoad } from '../../arrow/parts/beam.ts';
import type { Metres, MetresPerSecond } from '../../quantities/quantity.ts';

/** An arrow with the speed at which the bow shoots it. */
export interface ShotArrow {
  readonly arrow: Arrow;
  readonly speed: MetresPerSecond;
}

/** How a shaft stands under the push of the string, beside one that is known to shoot well from the same bow. */
export interface SpineVerdict {
  /** Thrust at its middle over its buckling load, by the mean acceleration. */
  readonly load: number;
  readonly goodLoad: number;
  /** Above 1 it bends more, and acts weaker. */
  readonly ratio: number;
  readonly acts: 'weaker' | 'stiffer' | 'alike';
  /** The static deflection with which it would bend as the other does, thousandths of an inch as spines are numbered. */
  readonly sameDeflection: number;
}

/** Shafts of one dozen differ in stiffness by about as much: less is no difference. Common practice, no source. */
const ALIKE_WITHIN = 0.05;
const SPINE_UNIT = 2.54e-5;

/** The load of a shaft under the mean push, v²/2s; null when its parts or its static deflection are not known. */
export function loadUnderPush({ arrow, speed }: ShotArrow, powerStroke: Metres): number | null {
  const beam = arrowBeam(arrow);
  return beam === null ? null : pushLoad(beam, speed ** 2 / (2 * powerStroke));
}

/**
 * Whether a shaft, cut and loaded as it is, acts stiffer or weaker under the push than one that shoots well.
 *
 * The load is proportional to the static deflection, so the deflection that would make the two alike follows.
 *
 * @returns null when the static deflection of one of them is not known
 */
export function spineVerdict(own: ShotArrow, good: ShotArrow, powerStroke: Metres): SpineVerdict | null {
  const [load, goodLoad] = [loadUnderPush(own, powerStroke), loadUnderPush(good, powerStroke)];
  const deflection = own.arrow.parts === null ? undefined : own.arrow.parts.shaft.deflection;
  if (load === null || goodLoad === null || deflection === undefined) return null;
  const ratio = load / goodLoad;
  return { load, goodLoad, ratio, acts: actsOf(ratio), sameDeflection: deflection / ratio / SPINE_UNIT };
}

function actsOf(ratio: number): SpineVerdict['acts'] {
  if (Math.abs(ratio - 1) <= ALIKE_WITHIN) return 'alike';
  return ratio > 1 ? 'weaker' : 'stiffer';
}
