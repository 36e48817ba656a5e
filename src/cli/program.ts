import { Command, CommanderError } from 'commander';
import type { Io } from './io.ts';
import { VERSION } from './version.ts';

/** Exit codes: done; the run failed; the command line or the setup file is wrong. */
export const EXIT = { done: 0, failed: 1, refused: 2 } as const;

type Make = (io: Io) => Command;

/** Every command by name; its options and help are loaded when a command line asks for it, its work when it runs. */
const COMMANDS: Readonly<Record<string, () => Promise<Make>>> = {
  new: async () => (await import('./commands/new.ts')).newCommand,
  check: async () => (await import('./commands/check.ts')).checkCommand,
  fly: async () => (await import('./commands/fly.ts')).flyCommand,
  marks: async () => (await import('./commands/marks.ts')).marksCommand,
  fit: async () => (await import('./commands/fit.ts')).fitCommand,
  tape: async () => (await import('./commands/tape.ts')).tapeCommand,
  cant: async () => (await import('./commands/cant.ts')).cantCommand,
  slope: async () => (await import('./commands/slope.ts')).slopeCommand,
  misjudge: async () => (await import('./commands/misjudge.ts')).misjudgeCommand,
  wind: async () => (await import('./commands/wind.ts')).windCommand,
  swing: async () => (await import('./commands/swing.ts')).swingCommand,
  broadhead: async () => (await import('./commands/broadhead.ts')).broadheadCommand,
  scatter: async () => (await import('./commands/scatter.ts')).scatterCommand,
  compare: async () => (await import('./commands/compare.ts')).compareCommand,
  vary: async () => (await import('./commands/vary.ts')).varyCommand,
};

/** The command line with the commands named, all of them unless told. Nothing runs until it is parsed. */
export async function createProgram(
  io: Io,
  names: readonly string[] = Object.keys(COMMANDS),
): Promise<Command> {
  const program = new Command('quillpath')
    .description('Arrow flight, calibrated sight marks and true-scale tapes from what an archer can measure.')
    .version(VERSION)
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err })
    .showHelpAfterError('(quillpath --help lists the commands, quillpath COMMAND --help explains one)');
  const makers = await Promise.all(names.flatMap((name) => COMMANDS[name]?.() ?? []));
  for (const make of makers) program.addCommand(make(io).copyInheritedSettings(program));
  return program;
}

/** The commands a command line can need: the one it names, none for the version, all for help and for slips. */
function wanted([first = '']: readonly string[]): readonly string[] | undefined {
  if (Object.hasOwn(COMMANDS, first)) return [first];
  return first === '--version' || first === '-V' ? [] : undefined;
}

/** Run one command line (without the program's name) and give the exit code. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  try {
    const program = await createProgram(io, wanted(argv));
    await program.parseAsync([...argv], { from: 'user' });
    return EXIT.done;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.refused;
    const { reportError } = await import('./report-error.ts');
    return reportError(error, io, argv.includes('--json'));
  }
}
