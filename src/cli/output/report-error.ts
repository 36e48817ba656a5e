import { NumericalError } from '../../numerics/numerical-error.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { QuantityError } from '../../quantities/quantity-error.ts';
import { ContradictionError } from '../../reports/asked/contradiction-error.ts';
import { QuestionError } from '../../reports/asked/question-error.ts';
import { contradictionWords, failureWords } from '../../reports/failure-words.ts';
import { SetupError } from '../../setup/problem.ts';
import { flagOf } from '../commands/flag.ts';
import { EXIT } from '../exit.ts';
import type { Io } from '../io.ts';
import { CommandLineError } from '../world/command-line-error.ts';

import { escapedControls, withoutControls } from './without-controls.ts';

interface Report {
  readonly code: string;
  /** What a calculation could not find, where its code leaves that open. */
  readonly reason?: string;
  readonly message: string;
  /** File, line, column and key path of every problem, where there are such. */
  readonly where: readonly object[];
  readonly exit: number;
}

/** So many problems are printed: a person mends them from the top and checks again. */
const MOST_TOLD = 20;

/** One message for one error on standard error, as text or as JSON; the exit code. */
export function reportError(error: unknown, io: Io, asJson: boolean): number {
  const { exit, ...report } = reportOf(error);
  io.err(
    asJson
      ? `${escapedControls(JSON.stringify({ error: report }, null, 2))}\n`
      : `${withoutControls(report.message)}\n`,
  );
  return exit;
}

function reportOf(error: unknown): Report {
  if (error instanceof SetupError) {
    const { count } = error;
    const told = error.problems.slice(0, MOST_TOLD).map(({ message }) => message);
    const more = count - told.length;
    const rest = more > 0 ? `And ${more} more.\n` : '';
    const summary = `${rest}${count} ${count === 1 ? 'problem' : 'problems'} in ${error.fileName}; nothing was computed.`;
    return {
      code: error.code,
      message: `${told.join('\n')}\n${summary}`,
      where: error.problems.map((problem) => ({ file: error.fileName, ...problem })),
      exit: EXIT.refused,
    };
  }
  if (error instanceof CommandLineError)
    return { code: error.code, message: error.message, where: [], exit: EXIT.refused };
  if (error instanceof QuestionError)
    return { code: error.code, message: error.said(flagOf), where: [], exit: EXIT.refused };
  if (error instanceof QuantityError || error instanceof DomainError)
    return { code: error.code, message: error.message, where: [], exit: EXIT.refused };
  if (error instanceof ContradictionError)
    return { code: error.code, message: contradictionWords(error, flagOf), where: [], exit: EXIT.failed };
  if (error instanceof NumericalError)
    return {
      code: error.code,
      ...(error.reason === undefined ? {} : { reason: error.reason }),
      message: failureWords(error, flagOf),
      where: [],
      exit: EXIT.failed,
    };
  if (error instanceof Error && 'code' in error && typeof error.code === 'string')
    return { code: error.code, message: error.message, where: [], exit: EXIT.failed };
  const message = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return {
    code: 'unexpected',
    message: `Unexpected: ${message}. This is a bug in quillpath: please report it with the command line and the setup file.`,
    where: [],
    exit: EXIT.failed,
  };
}
