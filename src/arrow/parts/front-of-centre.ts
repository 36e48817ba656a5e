import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, type Ratio, si } from '../../quantities/quantity.ts';

/**
 * How far ahead of the middle an arrow balances, as a share of its length.
 *
 *   (A - L / 2) / L
 *
 * @param balance A: bottom of the nock groove to the balance point
 * @param length  L: bottom of the nock groove to the end of the shaft, the point not counted
 * @throws DomainError for a length that is not above 0
 * @source ASTM F1435, Standard test method for determining the balance point of an arrow (abstract read; formula from memory)
 * @checked reference/balance-point
 */
export function frontOfCentre(balance: Metres, length: Metres): Ratio {
  if (!(length > 0)) throw new DomainError('arrow length (m)', length, 'above 0');
  return si((balance - length / 2) / length);
}
