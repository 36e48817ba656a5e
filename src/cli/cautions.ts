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
function lightArrowCaution({ setup, assembly }: Session): string {
  const weight = setup.bow.peak_draw_weight;
  if (weight === undefined) return '';
  const ratio = fromSi(assembly.arrow.flying.mass, 'gr') / fromSi(weight, 'lbf');
  if (ratio >= LEAST_GRAINS_PER_POUND) return '';
  return `Caution: ${ratio.toFixed(1)} gr of arrow per pound of draw weight. Below about ${LEAST_GRAINS_PER_POUND} gr/lb a bow can be damaged and an archer hurt: keep to the bow maker's minimum, and ask a qualified bow technician.`;
}

/** An arrow that does not right itself; empty for one that does, or when the file names no parts. */
function stabilityCaution({ assembly }: Session): string {
  const { staticMargin } = assembly.arrow;
  if (staticMargin === null || staticMargin > 0) return '';
  return 'Caution: the centre of pressure of this arrow is not behind its balance point, so it does not fly point first by itself. The numbers here are those of a point of its weight and drag; do not shoot it at any distance.';
}

/** Every caution that goes with a shot, each on a line of its own. */
export const shotCautions = (session: Session): string =>
  [stabilityCaution(session), lightArrowCaution(session), carryCaution(session)]
    .filter((line) => line !== '')
    .join('\n');
