import type { Argument, Command, Option } from 'commander';

/** What belongs in a place of the command line: one of a few words, the name of a file, or what only the archer knows. */
export type Expected = readonly string[] | 'file' | 'text';

/** An option as it is typed. */
export interface OptionWords {
  readonly long: string;
  readonly short: string | null;
  readonly what: string;
  /** The value that follows it; null for one that takes none. */
  readonly value: { readonly of: string; readonly expected: Expected } | null;
}

/** What follows the name of a command without being an option. */
export interface ArgumentWords {
  readonly of: string;
  readonly expected: Expected;
  /** Whether as many may follow as one likes. */
  readonly repeats: boolean;
}

export interface CommandWords {
  readonly name: string;
  /** Its first sentence, without the full stop. */
  readonly what: string;
  readonly arguments: readonly ArgumentWords[];
  readonly options: readonly OptionWords[];
}

/** Everything that may be written after the program's name. */
export interface ProgramWords {
  readonly commands: readonly CommandWords[];
  /** The options that need no command. */
  readonly options: readonly OptionWords[];
}

/** A value or an argument of one of these names is a file. */
const FILES: readonly string[] = ['file', 'setup'];

const expectedOf = (of: string, choices: readonly string[] | undefined): Expected => {
  if (choices !== undefined) return choices;
  return FILES.includes(of) ? 'file' : 'text';
};

function optionWords({ long, short, flags, description, argChoices }: Option): OptionWords {
  const of = /<(.+)>/.exec(flags)?.[1];
  return {
    long: long ?? flags,
    short: short ?? null,
    what: description,
    value: of === undefined ? null : { of, expected: expectedOf(of, argChoices) },
  };
}

const argumentWords = (argument: Argument): ArgumentWords => ({
  of: argument.name(),
  expected: expectedOf(argument.name(), argument.argChoices),
  repeats: argument.variadic,
});

/** What the command line accepts, from the definitions that its help is made of. */
export function programWords(program: Command): ProgramWords {
  const help = program.createHelp();
  const options = (command: Command) => help.visibleOptions(command).map(optionWords);
  const commands = program.commands.map((command) => ({
    name: command.name(),
    what: command.description().replace(/\.(\s.*)?$/s, ''),
    arguments: command.registeredArguments.map(argumentWords),
    options: options(command),
  }));
  const explained = [{ of: 'command', expected: commands.map(({ name }) => name), repeats: false }];
  return {
    // Of itself the program knows one command more.
    commands: [...commands, { name: 'help', what: 'Explain a command', arguments: explained, options: [] }],
    options: options(program),
  };
}
