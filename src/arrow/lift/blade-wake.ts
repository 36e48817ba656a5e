import { at } from '../../numerics/at.ts';
import { gaussLegendre } from '../../numerics/quadrature.ts';
import type { FinRing } from './fin-ring.ts';

/** What the wake of blades in front takes of the vanes' lift. */
export interface BladeWake {
  /** Share of the vanes' normal force that is lost at small incidence, 0 to below 1. */
  readonly share: number;
  /** Incidence at which the wake has moved so far off the vanes that half of that is left, rad. */
  readonly halfAngle: number;
}

/**
 * Relative standard uncertainty of the share. Estimates of this kind agree to a factor of about 1.5; nobody has measured it on
 * arrows, whose heads spin besides. A judgement.
 */
export const WAKE_UNCERTAINTY = 0.35;

/**
 * Distance between the rolled-up vortices over the span of an evenly loaded wing of elliptic lift. @source Prandtl; any
 * handbook of wing theory
 */
const ROLLED_UP = Math.PI / 4;
/**
 * Of a vortex, over the span: where its core turns as a solid. A judgement, of little effect: the vanes lie mostly inside the
 * pair.
 */
const CORE = 0.1;
/**
 * What the vortex pair below is multiplied by: with it the heads of 1.0, 1.125 and 1.25 in before vanes of 0.4 to 0.6 in lose
 * the 16 to 31 % that an independent estimate of the same kind gave for them. The pair alone gives three quarters of that,
 * which is inside the uncertainty.
 */
const ESTIMATE = 4 / 3;
/**
 * The wake cannot take more than this of the vanes' lift, whatever the sizes: beyond it the law of small downwash has no
 * meaning.
 */
const MOST = 0.6;

/** Angles round the shaft, and places along a vane's height, at which the downwash is taken. */
const [ROUND, ALONG] = [12, 8];

/**
 * The wake of a ring of blades on a ring of vanes, averaged over how they stand to each other.
 *
 * Blades that lift shed a pair of vortices, b′ = π/4 of the span apart, of circulation U S CNa α/(2 b′); between them the air
 * comes down on the vanes with a share of the incidence that does not depend on it. At an incidence the wake trails along the
 * flight while the shaft stands across it, so it passes the vanes at a distance h = α x: the downwash falls as 1/(1 +
 * (2h/b′)²).
 *
 * @param blades in front, `ringSlope` on the section
 * @param section of the shaft, π d²/4
 * @source rolled-up vortex pair behind a lifting wing (Prandtl, Spreiter and Sacks); `ESTIMATE` as told there
 */
export function bladeWake(blades: FinRing, vanes: FinRing, section: number): BladeWake {
  const { fin, ringSlope } = blades;
  const span = 2 * (fin.height + fin.rootRadius);
  const apart = ROLLED_UP * span;
  const strength = (section * ringSlope) / (2 * apart); // Γ/(U α)
  const core2 = (CORE * span) ** 2;
  /** Air coming down and going right at a place right and up of the axis, over U α. */
  const wash = (right: number, up: number): readonly [down: number, right: number] => {
    const of = (from: number): readonly [number, number] => {
      const away = right - from;
      const pull = strength / (2 * Math.PI) / (away * away + up * up + core2);
      return [pull * away, pull * up];
    };
    const [a, b] = [of(-apart / 2), of(apart / 2)];
    return [a[0] - b[0], a[1] - b[1]];
  };
  const { nodes, weights } = gaussLegendre(ALONG);
  let [lost, whole] = [0, 0];
  for (let k = 0; k < ROUND; k += 1) {
    const angle = (2 * Math.PI * (k + 0.5)) / ROUND;
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    for (let j = 0; j < ALONG; j += 1) {
      const share = (1 + at(nodes, j)) / 2;
      const { rootChord, tipChord, height, rootRadius } = vanes.fin;
      const radius = rootRadius + share * height;
      const chord = (rootChord + share * (tipChord - rootChord)) * at(weights, j);
      const [down, right] = wash(radius * cosine, radius * sine);
      // Square to the vane, and of that what points down.
      lost += chord * (down * cosine + right * sine) * cosine;
      whole += chord * cosine * cosine;
    }
  }
  return {
    share: Math.min((ESTIMATE * lost) / whole, MOST),
    halfAngle: apart / 2 / (blades.place - vanes.place),
  };
}
