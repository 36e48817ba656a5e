import { DomainError } from '../quantities/domain-error.ts';
import { type Ratio, si } from '../quantities/quantity.ts';
import type { Bow } from './bow.ts';

type Setting = Pick<Bow, 'peakDraw' | 'powerStroke'>;

/**
 * Energy that a bow stores in one setting over that in another: peak force times power stroke, for one shape of the draw curve.
 *
 *   E'/E = (W'/W) (s'/s)
 *
 * @returns null when only one of the two settings has a known draw weight; one that neither names is the same in both
 * @throws DomainError for a power stroke or a draw weight that is not above 0
 */
export function energyRatio(from: Setting, to: Setting): Ratio | null {
  for (const { peakDraw, powerStroke } of [from, to])
    if (!(powerStroke > 0 && (peakDraw === null || peakDraw > 0)))
      throw new DomainError(
        'power stroke (m) and draw weight (N)',
        Math.min(powerStroke, peakDraw ?? powerStroke),
        'above 0',
      );
  const strokes = to.powerStroke / from.powerStroke;
  if (from.peakDraw === null && to.peakDraw === null) return si(strokes);
  if (from.peakDraw === null || to.peakDraw === null) return null;
  return si((to.peakDraw / from.peakDraw) * strokes);
}

/**
 * Launch speed of one arrow from a bow in one setting over that in another: the root of the energies, as arrow and virtual mass
 * stay.
 *
 * @returns null, and errors, as for `energyRatio`
 */
export function speedRatio(from: Setting, to: Setting): Ratio | null {
  const energies = energyRatio(from, to);
  return energies === null ? null : si(Math.sqrt(energies));
}
