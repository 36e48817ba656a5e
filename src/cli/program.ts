import { Command, CommanderError } from 'commander';
import type { Question } from '../reports/asked/question.ts';
import { QUESTIONS, type QuestionName } from '../reports/questions.ts';
import type { FileCommand } from './commands/file-command.ts';
import { EXIT } from './exit.ts';
import type { Io } from './io.ts';
import { VERSION } from './version.ts';
import { CommandLineError } from './world/command-line-error.ts';

type Make = (io: Io) => Command;

/** The commands that ask no question, each loaded when it is wanted. */
const FILE_COMMANDS: Readonly<Record<string, () => Promise<FileCommand>>> = {
  new: async () => (await import('./commands/new.ts')).newCommand,
  add: async () => (await import('./commands/add.ts')).addCommand,
  completion: async () => (await import('./commands/completion.ts')).completionCommand(createProgram),
};
const NAMES: readonly string[] = ['new', 'add', ...Object.keys(QUESTIONS), 'completion'];

const isQuestion = (name: string): name is QuestionName => Object.hasOwn(QUESTIONS, name);

/** A command; its options and help are loaded when a command line asks for it, its work when it runs. */
async function makerOf(name: string): Promise<Make> {
  if (isQuestion(name)) return questionMaker(name);
  return (await fileCommand(name)).make;
}

async function fileCommand(name: string): Promise<FileCommand> {
  const load = FILE_COMMANDS[name];
  if (load === undefined) throw new RangeError(`there is no command ${name}`);
  return load();
}

/** What the help of a command says after its options. */
export async function guideTo(name: string): Promise<Pick<FileCommand, 'examples' | 'more'>> {
  if (!isQuestion(name)) return fileCommand(name);
  const question: Question = await QUESTIONS[name].question();
  const examples = question.examples.map(([comment, line]) => [comment, `${name} ${line}`] as const);
  return { ...question, examples };
}

/** A command of the options and help of a question. */
async function questionMaker(name: QuestionName): Promise<Make> {
  const [{ questionCommand }, question] = await Promise.all([
    import('./commands/question-command.ts'),
    QUESTIONS[name].question(),
  ]);
  return (io) =>
    questionCommand(question, async (setups, answering) =>
      (await import('./run-question.ts')).runQuestion(io, name, setups, answering),
    );
}

/** The command line with the commands named, or with all of them. Nothing runs until it is parsed. */
export async function createProgram(io: Io, names: readonly string[] = NAMES): Promise<Command> {
  const program = new Command('quillpath')
    .description('Arrow flight, calibrated sight marks and true-scale tapes from what an archer can measure.')
    .version(VERSION)
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err })
    .showHelpAfterError('(quillpath --help lists the commands, quillpath COMMAND --help explains one)');
  const makers = await Promise.all(names.map(makerOf));
  for (const make of makers) program.addCommand(make(io).copyInheritedSettings(program));
  return program;
}

/** The dashes that word processors make of two hyphens, before the name of an option. */
const LONG_DASHES = /^[\u2010-\u2015\u2212][-\u2010-\u2015\u2212]*(?<name>[a-z][a-z-]+)(?:=.*)?$/;

/** @throws CommandLineError for an option that was copied with other dashes than a keyboard has */
function refuseLongDashes(argv: readonly string[]): void {
  for (const word of argv) {
    const name = LONG_DASHES.exec(word)?.groups?.['name'];
    if (name !== undefined)
      throw new CommandLineError(`${word} begins with a long dash`, `Write two hyphens: --${name}.`);
  }
}

/**
 * Run one command line with the command it names loaded, or all of them for help and for slips.
 *
 * @returns the exit code; what a command throws is thrown
 */
export async function runProgram(argv: readonly string[], io: Io): Promise<number> {
  const [first = ''] = argv;
  refuseLongDashes(argv);
  const program = await createProgram(io, NAMES.includes(first) ? [first] : undefined);
  try {
    await program.parseAsync([...argv], { from: 'user' });
    return EXIT.done;
  } catch (error) {
    if (error instanceof CommanderError && error.code === 'commander.excessArguments')
      io.err('(a value with a blank in it stands in quotation marks: --to "60 yd")\n');
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.refused;
    throw error;
  }
}
