import { DomainError } from '../../quantities/domain-error.ts';
import { INCH, STANDARD_GRAVITY } from '../../quantities/exact.ts';
import { type Metres, type NewtonSquareMetres, si } from '../../quantities/quantity.ts';

/** The static spine test: a span, and a mass hung at its middle. */
export interface SpineTest {
  readonly span: Metres;
  /** Weight, N. */
  readonly load: number;
}

/** 880 g on 28 in. @source ASTM F2031-05 (span and load read second hand) */
export const SPINE_TEST: SpineTest = { span: si(28 * INCH), load: 0.88 * STANDARD_GRAVITY };

/**
 * Bending stiffness of a shaft from its static deflection: a beam on two supports, loaded in the middle.
 *
 *   EI = F L^3 / (48 delta)
 *
 * @param deflection sag at mid-span, above 0
 * @throws DomainError for a deflection that is not above 0
 * @source Timoshenko, Strength of Materials, simply supported beam
 * @checked reference/static-spine
 */
export function bendingStiffness(deflection: Metres, test = SPINE_TEST): NewtonSquareMetres {
  if (!(deflection > 0)) throw new DomainError('shaft deflection (m)', deflection, 'above 0');
  return si((test.load * test.span ** 3) / (48 * deflection));
}
