import { dragAt } from '../../arrow/drag/drag-at.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import type { MetresPerSecond } from '../../quantities/quantity.ts';

/** Sideways drift over drop of an arrow whose spin has settled; right positive, so negative for a right helical. */
export interface SettledDrift {
  readonly gyroscopic: number;
  /** The side force of the spinning shaft at its ceiling. */
  readonly shaftForceCeiling: number;
}

/**
 * Drift over drop in closed form, which is minus the tangent of the lean that cancels it.
 *
 *   gyroscopic = −w′ Ix/(m l) (1 − CD/CNa)
 *   shaft      = −w′ (2π ρ R²/m) [B₀ l_eff + B₁ + (1 − CD/CNa) (B₁ l_eff + B₂)/l]
 *
 * w′ spin per metre, l static margin, l_eff = Σ CN x²/|Σ CN x|, B_k integrals of x^k along the shaft, R its radius. Speed, range
 * and (for the first) density cancel; drag makes the drift of the last metres a little unlike the drop, and the spin-up
 * takes its first metres away: together under a tenth at 100 m.
 *
 * @param speed at which the drag coefficient is read
 * @returns null for an arrow whose attitude is not known
 * @source the balance of moments in flight/drifting.ts, solved for a spin of w′ V
 * @checked reference/sideways-figures
 */
export function settledDrift({ arrow, air }: FlightConditions, speed: MetresPerSecond): SettledDrift | null {
  const { attitude, mass: m, diameter } = arrow;
  if (attitude === null) return null;
  const {
    axialInertia: Ix,
    spinPerMetre: w,
    normalSlope,
    firstMoment,
    secondMoment,
    shaftMoments,
  } = attitude;
  const CD = dragAt(arrow, air, speed);
  const lift = 1 - CD / normalSlope;
  const margin = -firstMoment / normalSlope;
  const following = secondMoment / -firstMoment;
  const [B0, B1, B2] = shaftMoments;
  const radius = diameter / 2;
  return {
    gyroscopic: ((-w * Ix) / (m * margin)) * lift,
    shaftForceCeiling:
      ((-w * 2 * Math.PI * air.density * radius * radius) / m) *
      (B0 * following + B1 + (lift * (B1 * following + B2)) / margin),
  };
}
