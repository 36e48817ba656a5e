/** The reasons of failed calculations that a door tells its reader what to do about. */
export { FIT_NOT_CONVERGED } from '../calibration/fit-not-converged.ts';
export { NO_PIN } from '../sight/no-pin.ts';
