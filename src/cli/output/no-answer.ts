import type { NumericalError } from '../../numerics/numerical-error.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { FIT_NOT_CONVERGED, NO_PIN } from '../../reports/failure-reasons.ts';

const SHORTER = 'Choose a shorter --to or range, or check speed, mass and drag.';
const NEAR_OR_FAR =
  'The arrow falls short of it, or it is too near. Choose a shorter --to or a longer --from, or check speed, mass and drag.';
const WRONG_UNIT =
  'These values are outside what can be computed: check the setup file and the options for a wrong unit.';

/** Why a calculation has no answer, and what an archer can do about it. */
export function noAnswer({ code, message, at, reason }: NumericalError): string {
  if (code === 'too-many-evaluations')
    return `No answer: the arrow does not get that far with these values${placeWords(at)}. ${SHORTER} (${message}.)`;
  if (reason === NO_PIN)
    return `No answer: no setting of the sight hits at that range with these values. ${NEAR_OR_FAR} (${message}.)`;
  if (reason === FIT_NOT_CONVERGED)
    return `No answer: ${message}. Check the marks for a mistake, or leave them out with --uncalibrated.`;
  return `No answer: ${message}. ${WRONG_UNIT}`;
}

/** In both systems: a message of an error does not know which was asked for. */
const placeWords = (at: number | undefined): string =>
  at === undefined || !Number.isFinite(at)
    ? ''
    : `: the calculation stopped at ${formatQuantity(at, 'yd', 0)} (${formatQuantity(at, 'm', 0)})`;
