import { NumericalError } from '../numerics/numerical-error.ts';
import { NO_ZERO } from '../sight/no-pin.ts';
import { type Disagreement, disagreementOf, disagreementUnfitted } from './disagreement.ts';
import { farthest } from './farthest.ts';
import { type Calibration, type CalibrationProblem, calibrate } from './fit.ts';
import { FIT_NOT_CONVERGED } from './fit-not-converged.ts';

/** A fit that what does not belong has been left out of, and what that was. */
export interface JudgedFit {
  readonly calibration: Calibration;
  /** Null where the measurements agree. */
  readonly disagreement: Disagreement | null;
}

/**
 * The fit to use: of everything that was measured, or of the rest where measurements contradict one another and it is certain
 * which do not belong.
 *
 * @throws NumericalError when no minimum is found and nothing explains why
 */
export function judgedFit(problem: CalibrationProblem): JudgedFit {
  const all = calibratedOr(problem);
  if (all instanceof NumericalError) return unfitted(problem, all);
  const disagreement = disagreementOf(all);
  const rest = disagreement?.isContradiction === true ? disagreement.rest : null;
  return { calibration: rest ?? all, disagreement };
}

function calibratedOr(problem: CalibrationProblem): Calibration | NumericalError {
  try {
    return calibrate(problem);
  } catch (error) {
    if (error instanceof NumericalError) return error;
    throw error;
  }
}

/** Marks may be so wrong that no bow comes near them. */
function unfitted(problem: CalibrationProblem, failure: NumericalError): JudgedFit {
  if (failure.reason === NO_ZERO) throw failure;
  const disagreement = disagreementUnfitted(problem);
  const calibration = disagreement?.rest ?? disagreement?.explanations[0]?.calibration;
  if (disagreement === null || calibration === undefined) throw withPlace(problem, failure);
  return { calibration, disagreement };
}

/** The failure with the range of what to look at first, in place of how far the computation came. */
function withPlace(problem: CalibrationProblem, { code, message }: NumericalError): NumericalError {
  return new NumericalError(code, message, { at: farthest(problem)?.range, reason: FIT_NOT_CONVERGED });
}
