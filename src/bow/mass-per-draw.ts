import { DomainError } from '../quantities/domain-error.ts';
import { GRAIN, POUND_FORCE } from '../quantities/exact.ts';
import { type Kilograms, type Newtons, type Quantity, si } from '../quantities/quantity.ts';

/**
 * 5 grains per pound of peak draw: the arrow with which compound bows are rated, and the least the trade shoots. A maker's
 * own minimum takes precedence.
 *
 * @source ASTM F1544-11 and ATA/BOW-105-2008, rating conditions
 */
export const RATING_MASS_PER_DRAW: Quantity<'kg/N'> = si((5 * GRAIN) / POUND_FORCE);

/**
 * Arrow mass over peak draw weight.
 *
 * @throws DomainError for a draw weight that is not above 0
 * @checked reference/rating-condition
 */
export function massPerDraw(mass: Kilograms, peakDraw: Newtons): Quantity<'kg/N'> {
  if (!(peakDraw > 0)) throw new DomainError('peak draw weight (N)', peakDraw, 'above 0');
  return si(mass / peakDraw);
}
