import { InvalidArgumentError, Option } from 'commander';
import { chosen } from '../../reports/asked/chosen.ts';

const EXAMPLES_HEADING = '\nExamples:\n';

/** Help examples: a comment, then the command line. */
export const examples = (lines: readonly (readonly [comment: string, command: string])[]): string =>
  EXAMPLES_HEADING + lines.map(([comment, command]) => `  # ${comment}\n  quillpath ${command}`).join('\n');

/** An option that takes one of a few words, in any letter case and by their other names. */
export const chosenOption = (option: Option, choices: readonly string[]): Option =>
  option.choices(choices).argParser((given: string) => {
    const choice = chosen(choices, given);
    if (choice !== undefined) return choice;
    throw new InvalidArgumentError(`Allowed choices are ${choices.join(', ')}.`);
  });

export const unitsOption = (): Option =>
  chosenOption(
    new Option(
      '--units <system>',
      'units of what is printed, and of numbers written without one: metric keeps grains and pounds, si does not',
    ),
    ['imperial', 'metric', 'si'],
  ).default('imperial');
export const jsonOption = (): Option =>
  new Option('--json', 'print one JSON document in SI units instead').conflicts('csv');
export const csvOption = (): Option =>
  new Option('--csv', 'print the rows as comma-separated values instead');
export const uncalibratedOption = (): Option =>
  new Option('--uncalibrated', 'leave out the shot marks and use the measurements alone');
/** Where the same bytes are wanted tomorrow. */
export const dateOption = (): Option =>
  new Option(
    '--date <day>',
    'the day that the document carries, as 2026-04-18; without it that of SOURCE_DATE_EPOCH, else today',
  );
/** A screen of it is enough for most. */
export const allOption = (): Option =>
  new Option('--all', 'print everything: every table, chart and note in full');
