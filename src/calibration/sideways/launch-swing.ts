import { dragAt } from '../../arrow/drag/drag-at.ts';
import type { Rig } from '../../sight/rig.ts';

/** The two shapes of path that a bad start can give; they add in any proportion. */
export interface LaunchSwing {
  /** Sideways position (m) at a distance flown (m), per radian by which the tail stands to the left as the arrow leaves. */
  readonly tailLeft: (flown: number) => number;
  /** The same per radian and metre at which it leaves turning, tail to the left: the rate of the nock over the speed. */
  readonly turning: (flown: number) => number;
}

/**
 * Path of an arrow that starts with a swing, in closed form.
 *
 *   a′ = (1 + k) w − K a,   w′ = −M a − C w,   g′ = K a − k w,   y′ = g
 *
 * a incidence, w attitude turned per metre, g direction of the path, y position; K = P (CNa − CD)/m, k = P M₁/m, M = −P M₁/Iy,
 * C = P M₂/Iy − P CD/m, P = ρS/2, M₁ and M₂ moments of the normal-force slopes. Beyond the first one or two swings a straight
 * line is left, which a windage setting takes out: only the first 20 to 40 yd can show such a start.
 *
 * @source the plane motion of arrow/swing.ts
 */
export function launchSwing(rig: Rig): LaunchSwing {
  const { K, k, M, C } = coefficients(rig) ?? COMMON;
  // The matrix [[−K, 1 + k], [−M, −C]] has the eigenvalues decay ± i·turn.
  const decay = -(K + C) / 2;
  const turn = Math.sqrt(Math.max(K * C + M * (1 + k) - decay * decay, SLOWEST * SLOWEST));
  const determinant = K * C + M * (1 + k);
  type Pair = readonly [number, number];
  const times = ([a, w]: Pair): Pair => [-K * a + (1 + k) * w, -M * a - C * w];
  const undone = ([a, w]: Pair): Pair => [
    (-C * a - (1 + k) * w) / determinant,
    (M * a - K * w) / determinant,
  ];
  const position =
    (start: Pair) =>
    (x: number): number => {
      const [a, w] = start;
      const [a1, w1] = times(start);
      const grown = Math.exp(decay * x);
      const [c, s] = [grown * Math.cos(turn * x), (grown * Math.sin(turn * x)) / turn];
      const beyond: Pair = [
        c * a + s * (a1 - decay * a) - a - x * a1,
        c * w + s * (w1 - decay * w) - w - x * w1,
      ];
      const [twiceA, twiceW] = undone(undone(beyond));
      return K * twiceA - k * twiceW;
    };
  return { tailLeft: position([1, 0]), turning: position([0, 1]) };
}

/** Keeps the formula finite for an arrow so damped that it does not swing through, rad/m; its path is then the same to 1e-6. */
const SLOWEST = 1e-4;

interface Coefficients {
  readonly K: number;
  readonly k: number;
  readonly M: number;
  readonly C: number;
}

/**
 * Of the common hunting arrow of reference/rigid-body-figures, for an arrow of which only the mass is known; per metre and
 * per m².
 */
const COMMON: Coefficients = { K: 0.0176, k: -0.0068, M: 0.0995, C: 0.0434 };

/** Null when the arrow's attitude is not known, or nothing keeps it straight. */
function coefficients({ conditions: { arrow, air }, launchSpeed }: Rig): Coefficients | null {
  const { attitude, mass, diameter } = arrow;
  if (attitude === null || !(attitude.firstMoment < 0)) return null;
  const { transverseInertia: I, normalSlope, firstMoment, secondMoment } = attitude;
  const CD = dragAt(arrow, air, launchSpeed);
  const P = (air.density * Math.PI * diameter ** 2) / 8;
  return {
    K: (P * (normalSlope - CD)) / mass,
    k: (P * firstMoment) / mass,
    M: (-P * firstMoment) / I,
    C: (P * secondMoment) / I - (P * CD) / mass,
  };
}
