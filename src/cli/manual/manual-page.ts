import type { Argument, Command, Help, Option } from 'commander';
import { EXIT } from '../exit.ts';
import type { Io } from '../io.ts';
import { createProgram, guideTo } from '../program.ts';
import { VERSION } from '../version.ts';
import { asTyped, pageHead, pageOf, paragraph, roffText, section, subsection, term, usages } from './roff.ts';

/** An option of so many commands stands once for all of them. */
const SHARED_BY = 5;

/** What a command has to say in the manual. */
interface Entry {
  readonly command: Command;
  readonly help: Help;
  readonly options: readonly Told[];
  readonly examples: readonly (readonly [comment: string, line: string])[];
  readonly more: string;
}

/** An option or an argument in the words of the help. */
interface Told {
  readonly name: string;
  readonly what: string;
}

const optionTold = (help: Help, option: Option): Told => ({
  name: help.optionTerm(option),
  what: help.optionDescription(option),
});
const argumentTold = (help: Help, argument: Argument): Told => ({
  name: help.argumentTerm(argument),
  what: help.argumentDescription(argument),
});

async function entryOf(command: Command): Promise<Entry> {
  const help = command.createHelp();
  const { examples, more = '' } = await guideTo(command.name());
  const options = help.visibleOptions(command).map((option) => optionTold(help, option));
  return { command, help, options, examples, more };
}

const keyOf = ({ name, what }: Told): string => `${name}\n${what}`;

/** The options that many commands have in the same words, in the order in which they are first met. */
function sharedOptions(entries: readonly Entry[]): readonly Told[] {
  const all = entries.flatMap(({ options }) => options);
  const met = new Map(all.map((told) => [keyOf(told), told]));
  return [...met.values()].filter(
    (told) => all.filter((other) => keyOf(other) === keyOf(told)).length >= SHARED_BY,
  );
}

function commandSection({ command, help, options, more }: Entry, shared: ReadonlySet<string>): string {
  const own = options.filter((option) => !shared.has(keyOf(option)));
  const others = options.filter((option) => shared.has(keyOf(option))).map(({ name }) => name);
  return [
    subsection(command.name()),
    usages([help.commandUsage(command)]),
    paragraph(command.description()),
    ...help
      .visibleArguments(command)
      .map((argument) => argumentTold(help, argument))
      .map(toTerm),
    ...own.map(toTerm),
    ...(others.length === 0 ? [] : [paragraph(`Under OPTIONS: ${others.join(', ')}.`)]),
    ...(more === '' ? [] : [asTyped(more.trim().split('\n'))]),
  ].join('\n');
}

const toTerm = ({ name, what }: Told): string => term(name, what);

/** The manual page, quillpath(1), in roff: made of the definitions that the help is made of. */
export async function manualPage(io: Io): Promise<string> {
  const program = await createProgram(io);
  const help = program.createHelp();
  const entries = await Promise.all(program.commands.map(entryOf));
  const shared = sharedOptions(entries);
  const sharedKeys = new Set(shared.map(keyOf));
  const globals = help.visibleOptions(program).map((option) => optionTold(help, option));
  return pageOf([
    pageHead('quillpath', VERSION),
    section('NAME'),
    `quillpath \\- ${roffText(program.description().replace(/\.$/, ''))}`,
    section('SYNOPSIS'),
    usages(SYNOPSIS),
    section('DESCRIPTION'),
    ...DESCRIPTION.map(paragraph),
    section('COMMANDS'),
    ...entries.map((entry) => commandSection(entry, sharedKeys)),
    section('OPTIONS'),
    ...globals.filter((option) => !sharedKeys.has(keyOf(option))).map(toTerm),
    ...shared.map(toTerm),
    section('EXIT STATUS'),
    ...EXITS.map(([code, meaning]) => term(String(code), meaning)),
    section('FILES'),
    ...FILES.map(([name, what]) => term(name, what)),
    section('EXAMPLES'),
    ...entries.flatMap(({ examples }) =>
      examples.map(([comment, line]) => asTyped([`# ${comment}`, `quillpath ${line}`])),
    ),
  ]);
}

const SYNOPSIS = [
  'quillpath COMMAND [options] <setup>',
  'quillpath COMMAND --help',
  'quillpath --version',
] as const;

const DESCRIPTION = [
  'quillpath computes the flight of an arrow from what an archer can measure, fits itself to shot marks, and answers one ' +
    'question for each command. The first line of an answer is the answer itself; --all prints every table, chart and note.',
  'With shot marks in the setup file every command works from the fitted model; --uncalibrated leaves the marks out. Every ' +
    'number comes with its unit and, where it is uncertain, with one standard error.',
  'Light arrows break bows: keep to the minimum of the bow maker. Every shot needs a backstop. For game, the local law decides.',
] as const;

const EXITS = [
  [EXIT.done, 'done'],
  [EXIT.failed, 'the run failed, such as a file that could not be written'],
  [
    EXIT.refused,
    'the command line or the setup file is wrong; the message says where and what to write instead',
  ],
  ['128 and more', 'a signal ended the run: 128 and the number of the signal, such as 130 for Ctrl-C'],
] as const;

const FILES = [
  ['setup.yaml', 'the setup file, YAML: what was measured of bow, arrow, sight and air, and the marks shot'],
  ['.pdf, .svg', 'documents, as the ending of the name after --out says; a file appears whole or not at all'],
] as const;
