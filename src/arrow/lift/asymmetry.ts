import { type RadiansPerMetre, si } from '../../quantities/quantity.ts';

/**
 * Two components square to the shaft, in the arrow's own axes: along its reference mark, and a quarter turn clockwise from
 * it seen from behind.
 */
type AcrossShaft = readonly [alongMark: number, clockwise: number];

/**
 * What an arrow that is not alike all round feels when it flies straight: a force and a moment that turn with it.
 *
 *   force = q S (sum of slope x tilt),   first moment = q S (sum of slope x tilt x place)
 *
 * tilt: how far the direction of a part leans from the arrow's axis, radians; place from the balance point, forward positive.
 */
export interface Asymmetry {
  readonly force: AcrossShaft;
  /** m */
  readonly firstMoment: AcrossShaft;
  /** What it adds to the settled spin per metre. */
  readonly spinPerMetre: RadiansPerMetre;
}

/** The arrow that is alike all round. */
export const ALIKE: Asymmetry = { force: [0, 0], firstMoment: [0, 0], spinPerMetre: si(0) };
