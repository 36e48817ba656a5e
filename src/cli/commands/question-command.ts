import { Argument, Command, InvalidArgumentError, Option } from 'commander';
import { countFrom } from '../../reports/asked/fill.ts';
import type { Option as Asked } from '../../reports/asked/option.ts';
import type { Question } from '../../reports/asked/question.ts';
import { QuestionError } from '../../reports/asked/question-error.ts';
import type { Answering } from '../run-question.ts';
import { flagOf } from './flag.ts';
import {
  allOption,
  chosenOption,
  csvOption,
  dateOption,
  examples,
  jsonOption,
  uncalibratedOption,
  unitsOption,
} from './shared-options.ts';

/** A command whose options and help are those of a question. */
export function questionCommand(
  asked: Question,
  answer: (setups: readonly [string, ...string[]], options: Answering) => Promise<void>,
): Command {
  const command = new Command(asked.name).description(asked.purpose);
  if (asked.setups === 'one') command.argument('<setup>', 'setup file (YAML); - reads standard input');
  else command.argument('<setup...>', asked.setupsWhat);
  const { sheet } = asked;
  const subjects = Object.entries(asked.options).filter(([, { kind }]) => kind === 'subject');
  for (const [name, option] of subjects) command.addArgument(subjectArgument(name, option));
  const own = Object.entries(asked.options)
    .filter(([, { kind }]) => kind !== 'subject')
    .map(([name, option]) => optionOf(name, option));
  const out =
    sheet === null
      ? []
      : [new Option('--out <file>', sheet.what).makeOptionMandatory(sheet.when === 'always'), dateOption()];
  const shared = [
    allOption(),
    jsonOption(),
    ...(asked.hasRows ? [csvOption()] : []),
    unitsOption(),
    uncalibratedOption(),
  ];
  for (const option of [...out, ...own, ...shared]) command.addOption(option);
  if (asked.more !== undefined) command.addHelpText('after', asked.more);
  command.addHelpText(
    'after',
    examples(asked.examples.map(([comment, line]) => [comment, `${asked.name} ${line}`])),
  );
  return command.action(async (setups: string | readonly [string, ...string[]]) => {
    const options = command.opts<Answering & Readonly<Record<string, unknown>>>();
    const spoken = subjects.map(([name], i) => [name, command.args[i + 1]] as const);
    const given = Object.fromEntries([
      ...spoken.filter(([, word]) => word !== undefined),
      ...Object.keys(asked.options)
        .filter((name) => command.getOptionValueSource(name) === 'cli')
        .map((name) => [name, options[name]]),
    ]);
    await answer(typeof setups === 'string' ? [setups] : setups, { ...options, given });
  });
}

/** What a question is asked about, in a word after the setup. The question itself refuses a word that it does not know. */
function subjectArgument(name: string, option: Asked): Argument {
  const made = new Argument(`[${name}]`, option.what);
  return option.kind === 'subject' ? made.choices(option.choices).argParser((word) => word) : made;
}

/** An option as the command line shows it. The question fills in the defaults itself; here they are for the help. */
function optionOf(name: string, option: Asked): Option {
  const flags = option.kind === 'flag' ? flagOf(name) : `${flagOf(name)} <${option.of}>`;
  const made = new Option(flags, option.what);
  switch (option.kind) {
    case 'text':
      return made.default(option.value);
    case 'range':
      return made.default(
        `${option.yards} yd`,
        `"${option.yards} yd"; with --units metric "${option.yards} m"`,
      );
    case 'count':
      return made.default(option.value).argParser((given) => {
        try {
          return countFrom(name, given, option);
        } catch (error) {
          if (!(error instanceof QuestionError)) throw error;
          throw new InvalidArgumentError(`Write a whole number from ${option.least} to ${option.most}.`);
        }
      });
    case 'choice':
      return chosenOption(made, option.choices).default(option.value);
    case 'list':
      return made.argParser(gathered).makeOptionMandatory(true);
    case 'optional list':
      return made.argParser(gathered);
    default:
      return made;
  }
}

/** What was written each time. */
const gathered = (given: string, before: readonly string[] = []): readonly string[] => [...before, given];
