import { FIT_NOT_CONVERGED } from '../calibration/fit-not-converged.ts';
import type { NumericalError } from '../numerics/numerical-error.ts';
import { formatQuantity } from '../quantities/format.ts';
import { NO_PIN, NO_ZERO } from '../sight/no-pin.ts';
import type { ContradictionError } from './asked/contradiction-error.ts';
import { type Naming, named } from './asked/question-error.ts';

const SHORTER = 'Choose a shorter {to} or range, or check speed, mass and drag.';
const CHECK_ZERO =
  'The arrow falls short of it, or it is too near. Check sight.zero_range, launch.speed, and the mass and drag of the arrow.';
const NEAR_OR_FAR =
  'The arrow falls short of it, or it is too near. Choose a shorter {to} or a longer {from}, or check speed, mass and drag.';
const BEYOND =
  'The arrow does not get that far, or a value is beyond what can be computed. Choose a shorter {to} or range, or check speed, ' +
  'mass and drag.';
const WRONG_UNIT =
  'These values are outside what can be computed: check the setup file and the options for a wrong unit.';

/** Why a calculation has no answer, and what an archer can do about it, with the options named as a door names them. */
export function failureWords({ code, message, at, reason }: NumericalError, naming: Naming): string {
  if (reason === NO_ZERO)
    return `No answer: no setting of the sight hits at the zero range${at === undefined ? '' : `, ${inBoth(at)}`}. ${CHECK_ZERO}`;
  if (reason === FIT_NOT_CONVERGED) return fitWords(message, at, naming);
  if (code === 'too-many-evaluations')
    return (
      `No answer: the arrow does not get that far with these values${placeWords(at)}. ` +
      named(SHORTER, naming)
    );
  if (reason === NO_PIN)
    return `No answer: no setting of the sight hits at that range with these values. ${named(NEAR_OR_FAR, naming)}`;
  // What a number that is none was read from says nothing to an archer.
  if (code === 'non-finite') return `No answer. ${named(BEYOND, naming)}`;
  return `No answer: ${message}. ${WRONG_UNIT}`;
}

/** @param at range of what to look at first, m */
function fitWords(message: string, at: number | undefined, naming: Naming): string {
  const first =
    at === undefined
      ? ''
      : ` first what was shot at ${inBoth(at)}, which is farthest from what the file's other numbers say`;
  return (
    `No answer: no bow was found that these marks are of. Check${first === '' ? ' the marks' : first}; then speed, mass, ` +
    `drag and the scale. Or leave the marks out with ${naming('uncalibrated')}. (${message}.)`
  );
}

/** What contradicts what, and how to go on, with the options named as a door names them. */
export const contradictionWords = ({ message }: ContradictionError, naming: Naming): string =>
  `${message}\nNothing was written. Correct the file, or write ${naming('anyway')} for a draft, marked as one.`;

/** In both systems: a message of an error does not know which was asked for. */
const placeWords = (at: number | undefined): string =>
  at === undefined || !Number.isFinite(at) ? '' : `: the calculation stopped at ${inBoth(at)}`;

const inBoth = (range: number): string =>
  `${formatQuantity(range, 'yd', 0)} (${formatQuantity(range, 'm', 0)})`;
