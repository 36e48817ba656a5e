import { Option } from 'commander';

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
/** A screen of it is enough for most. */
export const allOption = (): Option =>
  new Option('--all', 'print everything: every table, chart and note in full');
