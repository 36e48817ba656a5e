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
  new Option('--uncalibrated', 'leave out the shot marks and use the measurements alone');

/** A range or a step in yards; asked for metric units, as many metres: a round number stays one. */
export const rangeOption = (flags: string, description: string, yards: number): Option =>
  new Option(flags, description).default(`${yards} yd`, `"${yards} yd"; with --units metric "${yards} m"`);

const YARDS = /^(\d+) yd$/;

/** Gives the ranges of a command that nobody wrote in metres when `isMetric` says so. */
export const withMetricRanges = (
  command: Command,
  isMetric: (command: Command) => boolean = (asked) => asked.getOptionValue('units') === 'metric',
): Command =>
  command.hook('preAction', (asked) => {
    if (!isMetric(asked)) return;
    for (const { defaultValue, attributeName } of asked.options.map((option) => ({
      defaultValue: String(option.defaultValue),
      attributeName: option.attributeName(),
    })))
      if (YARDS.test(defaultValue) && asked.getOptionValueSource(attributeName) === 'default')
        asked.setOptionValueWithSource(attributeName, defaultValue.replace(YARDS, '$1 m'), 'default');
  });

/** A command on one setup file, with the options all of them share. */
export const setupCommand = (name: string, purpose: string): Command =>
  withMetricRanges(new Command(name))
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
