import { carry } from '../flight/carry.ts';
import { formatQuantity, fromSi } from '../quantities/format.ts';
import type { Session } from './open-setup.ts';

/** Grains of arrow per pound of peak draw weight. @source ASTM F1544: 5 gr/lb is the rating condition of a compound bow */
const LEAST_GRAINS_PER_POUND = 5;

/** The backstop, and how far the arrow could go without one. */
export function carryCaution({ calibration, units }: Session): string {
  const { distance } = carry(calibration.rig.conditions, calibration.rig.launchSpeed);
  return `Caution: this arrow could carry ${formatQuantity(distance, units.range, 0)}. Every shot needs a backstop and a clear way to it; never shoot over a crest.`;
}

/** A light arrow can wreck a bow; empty when the draw weight is not known or the arrow is heavy enough. */
export function lightArrowCaution({ setup, assembly }: Session): string {
  const weight = setup.bow.peak_draw_weight;
  if (weight === undefined) return '';
  const ratio = fromSi(assembly.arrow.flying.mass, 'gr') / fromSi(weight, 'lbf');
  if (ratio >= LEAST_GRAINS_PER_POUND) return '';
  return `Caution: ${ratio.toFixed(1)} gr of arrow per pound of draw weight. Below about ${LEAST_GRAINS_PER_POUND} gr/lb a bow can be damaged and an archer hurt: keep to the bow maker's minimum, and ask a qualified bow technician.`;
}
