import { calibrationInAir } from '../../calibration/elsewhere.ts';
import { rigAt } from '../../setup/assemble/assemble-place.ts';
import type { Place, Session } from '../session.ts';

/**
 * The session at another place: the fit, which used the air of the marks, stays, and every answer is for the air of the place. The
 * sight stays as it was zeroed at home.
 *
 * @throws NumericalError when the arrow falls short of the zero range there
 */
export const standingAt = (session: Session, place: Place): Session => ({
  ...session,
  place,
  calibration: calibrationInAir(session.calibration, rigAt(place.conditions)),
});
