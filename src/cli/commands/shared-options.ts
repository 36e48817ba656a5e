import { Command, InvalidArgumentError, Option } from 'commander';
import type { UnitSystem } from '../../quantities/display-units.ts';

/** What every command that answers with numbers accepts. */
export interface AnswerOptions {
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly units: UnitSystem;
  readonly uncalibrated?: boolean;
}

const EXAMPLES_HEADING = '\nExamples:\n';

/** Help examples: a comment, then the command line. */
export const examples = (lines: readonly (readonly [comment: string, command: string])[]): string =>
  EXAMPLES_HEADING + lines.map(([comment, command]) => `  # ${comment}\n  quillpath ${command}`).join('\n');

export const unitsOption = (): Option =>
  new Option('--units <system>', 'units of what is printed; files may mix any units')
    .choices(['imperial', 'metric'])
    .default('imperial');
export const jsonOption = (): Option =>
  new Option('--json', 'print one JSON document in SI units instead').conflicts('csv');
export const csvOption = (): Option =>
  new Option('--csv', 'print the rows as comma-separated values instead');
export const uncalibratedOption = (): Option =>
  new Option('--uncalibrated', 'leave the shot marks aside and use the measurements alone');

/** A command on one setup file, with the options all of them share. */
export const setupCommand = (name: string, purpose: string): Command =>
  new Command(name)
    .description(purpose)
    .argument('<setup>', 'setup file (YAML); - reads standard input')
    .addOption(jsonOption())
    .addOption(csvOption())
    .addOption(unitsOption())
    .addOption(uncalibratedOption());

/** A whole number from `least` to `most`. */
export const wholeNumber =
  (least: number, most: number) =>
  (text: string): number => {
    const value = Number(text);
    if (text.trim() === '' || !Number.isInteger(value) || value < least || value > most)
      throw new InvalidArgumentError(`Write a whole number from ${least} to ${most}.`);
    return value;
  };
