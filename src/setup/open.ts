import type { Disagreement } from '../calibration/disagreement.ts';
import type { Calibration } from '../calibration/fit.ts';
import { judgedFit } from '../calibration/judged-fit.ts';
import { type Assembly, assemble } from './assemble/assemble.ts';
import { type Override, readSetup } from './read.ts';
import type { SetupFile } from './schema/schema.ts';
import { unassembled } from './unassembled.ts';

/** A setup that was read, assembled and fitted to its marks. */
export interface OpenSetup {
  /** The text it was read from, and the name of the file for messages. */
  readonly text: string;
  readonly name: string;
  readonly setup: SetupFile;
  readonly title: string;
  readonly assembly: Assembly;
  /** With no measurements when the file holds none or they were left aside: then it carries the priors' uncertainty. */
  readonly calibration: Calibration;
  /** What was measured and does not agree; null where all does. What is named as wrong is left out of `calibration`. */
  readonly disagreement: Disagreement | null;
  readonly calibrated: boolean;
  /** Whether what was shot was left aside on purpose. */
  readonly uncalibrated: boolean;
}

export interface OpenOptions {
  /** Leave aside what was shot, and use the measurements of bow and arrow alone. */
  readonly uncalibrated?: boolean | undefined;
  /** Values that take the place of those in the text. */
  readonly overrides?: readonly Override[];
}

/**
 * Open a setup from its text.
 *
 * @param name of the file, for messages, and for the title of a setup that has none
 * @throws SetupError for what is wrong with the text; NumericalError when it cannot be computed
 */
export function openSetup(
  text: string,
  name: string,
  { uncalibrated = false, overrides = [] }: OpenOptions = {},
): OpenSetup {
  const setup = readSetup(text, name, overrides);
  const assembly = assembled(uncalibrated ? withoutShots(setup) : setup, text, name);
  return {
    text,
    name,
    setup,
    title: setup.title ?? baseName(name),
    assembly,
    ...judgedFit(assembly.problem),
    calibrated: assembly.problem.measurements.length > 0,
    uncalibrated,
  };
}

/** @throws SetupError for values that go together in no bow, which only putting it together shows */
function assembled(setup: SetupFile, text: string, name: string): Assembly {
  try {
    return assemble(setup);
  } catch (error) {
    throw unassembled(error, text, name);
  }
}

/** The name of a file without the folders that it stands in: paper should look the same wherever a setup was kept. */
const baseName = (path: string): string => path.replace(/^.*[/\\](?=.)/s, '');

/** The setup as if nothing had been shot: what the scale reads at the zero range then rests on the file's word alone. */
function withoutShots({
  marks: _marks,
  speeds: _speeds,
  drops: _drops,
  days: _days,
  ...unshot
}: SetupFile): SetupFile {
  return unshot;
}
