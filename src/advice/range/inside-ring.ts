import { at } from '../../numerics/at.ts';
import { normalCumulative } from '../../numerics/distributions.ts';
import { gaussLegendre } from '../../numerics/quadrature.ts';

/** A normal scatter of hits about a place off the centre, m. */
export interface Scatter {
  readonly height: number;
  readonly lateral: number;
  /** Standard deviations; either may be 0. */
  readonly upward: number;
  readonly sideways: number;
}

/** Over these the density is smooth, so that this many nodes leave an error below 1e-9. */
const NODES = 32;
/** Standard deviations beyond which nothing is counted: 2e-9 of the hits. */
const REACH = 6;

/**
 * Chance that a hit lands within `radius` (m) of the centre.
 *
 *   P = ∫ N(y; height, upward) [Φ((c − lateral)/sideways) − Φ((−c − lateral)/sideways)] dy,   c = √(r² − y²), |y| ≤ r
 *
 * @checked unit: round and centred it is 1 − exp(−r²/2s²)
 */
export function insideRing(radius: number, { height, lateral, upward, sideways }: Scatter): number {
  const across = (y: number): number => {
    const half = Math.sqrt(Math.max(radius * radius - y * y, 0));
    return below(half - lateral, sideways) - below(-half - lateral, sideways);
  };
  if (upward === 0) return Math.abs(height) <= radius ? across(height) : 0;
  const low = Math.max(-radius, height - REACH * upward);
  const high = Math.min(radius, height + REACH * upward);
  if (low >= high) return 0;
  // Heights as radius × sin t take the square root's kink at the edges away.
  const [from, to] = [Math.asin(low / radius), Math.asin(high / radius)];
  const { nodes, weights } = gaussLegendre(NODES);
  const sum = nodes.reduce((total, node, k) => {
    const t = (from + to + (to - from) * node) / 2;
    const y = radius * Math.sin(t);
    const density = Math.exp(-(((y - height) / upward) ** 2) / 2) / (upward * Math.sqrt(2 * Math.PI));
    return total + at(weights, k) * density * across(y) * radius * Math.cos(t);
  }, 0);
  return (sum * (to - from)) / 2;
}

function below(distance: number, sd: number): number {
  if (sd === 0) return distance >= 0 ? 1 : 0;
  return normalCumulative(distance / sd);
}
