import { DomainError } from '../quantities/domain-error.ts';
import { type Joules, type Metres, type Newtons, type Ratio, si } from '../quantities/quantity.ts';

/**
 * How full a draw curve is: energy over peak force times power stroke. Recurves store 0.58; a compound, whose force stays
 * near its peak for most of the draw, more; none can reach 1.
 *
 * @param energy stored, or (as a lower bound of it) given to arrow and virtual mass
 * @throws DomainError for a force or stroke that is not above 0
 * @checked reference/stored-energy
 */
export function drawCurveFullness(energy: Joules, peakForce: Newtons, powerStroke: Metres): Ratio {
  const rectangle = peakForce * powerStroke;
  if (!(rectangle > 0)) throw new DomainError('peak force times power stroke (J)', rectangle, 'above 0');
  return si(energy / rectangle);
}
