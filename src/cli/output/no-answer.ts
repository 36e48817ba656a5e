import type { NumericalError } from '../../numerics/numerical-error.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { FIT_NOT_CONVERGED, NO_PIN } from '../../reports/failure-reasons.ts';

/** Why a calculation has no answer, and what an archer can do about it. */
export function noAnswer({ code, message, at, reason }: NumericalError): string {
  if (code === 'too-many-evaluations')
    return `No answer: the arrow does not get that far with these values${placeWords(at)}. Choose a shorter --to or range, or check speed, mass and drag. (${message}.)`;
  if (reason === NO_PIN)
    return `No answer: no setting of the sight hits at that range with these values; the arrow falls short of it, or the range is too near. Choose a shorter --to or a longer --from, or check speed, mass and drag. (${message}.)`;
  if (reason === FIT_NOT_CONVERGED)
    return `No answer: ${message}. Check the marks for a mistake, or leave them out with --uncalibrated.`;
  return `No answer: ${message}. These values are outside what can be computed: check the setup file and the options for a wrong unit.`;
}

/** In both systems: a message of an error does not know which was asked for. */
const placeWords = (at: number | undefined): string =>
  at === undefined || !Number.isFinite(at)
    ? ''
    : `: the calculation stopped at ${formatQuantity(at, 'yd', 0)} (${formatQuantity(at, 'm', 0)})`;
