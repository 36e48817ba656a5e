import { type Calibration, calibrate } from '../calibration/fit.ts';
import type { Io } from '../cli/io.ts';
import { readingError } from '../cli/output/file-words.ts';
import type { DisplayUnits, UnitSystem } from '../quantities/display-units.ts';
import { displayUnits } from '../quantities/display-units.ts';
import { type Assembly, assemble } from './assemble/assemble.ts';
import { type Override, readSetup } from './read.ts';
import type { SetupFile } from './schema/schema.ts';

/** A setup file opened for a command: read, assembled, and held to its marks. */
export interface Session {
  readonly setup: SetupFile;
  readonly title: string;
  readonly assembly: Assembly;
  /** With no measurements when the file holds none or `--uncalibrated` was asked for: then it carries the priors' uncertainty. */
  readonly calibration: Calibration;
  readonly calibrated: boolean;
  readonly units: DisplayUnits;
}

export interface OpenOptions {
  readonly units: UnitSystem;
  readonly uncalibrated?: boolean;
}

/** The text of a file named on the command line. @throws CommandLineError when it cannot be read */
export function readNamedFile(io: Io, path: string): string {
  try {
    return io.readText(path);
  } catch (error) {
    throw readingError(error, path);
  }
}

/** @throws SetupError, DomainError, CommandLineError for what is wrong with the file; NumericalError when it cannot be computed */
export function openSetup(
  io: Io,
  path: string,
  options: OpenOptions,
  overrides: readonly Override[] = [],
): Session {
  const setup = readSetup(readNamedFile(io, path), path, overrides);
  return openSession(setup, path, options);
}

/** A session from a setup that has been read. */
export function openSession(
  setup: SetupFile,
  path: string,
  { units, uncalibrated = false }: OpenOptions,
): Session {
  const assembly = assemble(uncalibrated ? withoutShots(setup) : setup);
  return {
    setup,
    title: setup.title ?? path,
    assembly,
    calibration: calibrate(assembly.problem),
    calibrated: assembly.problem.measurements.length > 0,
    units: displayUnits(units),
  };
}

/** The setup as if nothing had been shot: what the scale reads at the zero range then rests on the file's word alone. */
function withoutShots({ marks: _marks, speeds: _speeds, drops: _drops, ...unshot }: SetupFile): SetupFile {
  return unshot;
}
