import type { UnitSystem } from '../../quantities/display-units.ts';
import { inUnits, type Session } from '../../reports/session.ts';
import { openSetup } from '../../setup/open.ts';
import type { Io } from '../io.ts';
import { CommandLineError } from './command-line-error.ts';
import { readingError, type Wanted } from './file-words.ts';

/** The text of a file named on the command line. @throws CommandLineError when it cannot be read */
export function readNamedFile(io: Io, path: string, wanted?: Wanted): string {
  try {
    return io.readText(path);
  } catch (error) {
    throw readingError(error, path, wanted);
  }
}

/** The text of a file that an option names. @throws CommandLineError that names the option */
export function readOptionFile(io: Io, path: string, wanted: Exclude<Wanted, 'setup'>): string {
  const { flag, what } = wanted;
  if (path.trim() === '')
    throw new CommandLineError(`${flag} names no file`, `Write ${flag} and the name of one: ${what}.`);
  return readNamedFile(io, path, wanted);
}

/**
 * @throws SetupError, DomainError, CommandLineError for what is wrong with the file; NumericalError when it cannot be computed
 */
export const openNamedFile = (
  io: Io,
  path: string,
  { units, uncalibrated }: { readonly units: UnitSystem; readonly uncalibrated?: boolean | undefined },
): Session => inUnits(openSetup(readNamedFile(io, path), path, { uncalibrated }), units);
