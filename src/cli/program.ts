import { Command, CommanderError } from 'commander';
import { broadheadCommand } from './commands/broadhead.ts';
import { cantCommand } from './commands/cant.ts';
import { checkCommand } from './commands/check.ts';
import { compareCommand } from './commands/compare.ts';
import { fitCommand } from './commands/fit.ts';
import { flyCommand } from './commands/fly.ts';
import { marksCommand } from './commands/marks.ts';
import { misjudgeCommand } from './commands/misjudge.ts';
import { newCommand } from './commands/new.ts';
import { scatterCommand } from './commands/scatter.ts';
import { slopeCommand } from './commands/slope.ts';
import { swingCommand } from './commands/swing.ts';
import { tapeCommand } from './commands/tape.ts';
import { varyCommand } from './commands/vary.ts';
import { windCommand } from './commands/wind.ts';
import type { Io } from './io.ts';
import { VERSION } from './version.ts';

/** Exit codes: done; the run failed; the command line or the setup file is wrong. */
export const EXIT = { done: 0, failed: 1, refused: 2 } as const;

const COMMANDS = [
  newCommand,
  checkCommand,
  flyCommand,
  marksCommand,
  fitCommand,
  tapeCommand,
  cantCommand,
  slopeCommand,
  misjudgeCommand,
  windCommand,
  swingCommand,
  broadheadCommand,
  scatterCommand,
  compareCommand,
  varyCommand,
];

/** The whole command line. Nothing runs until it is parsed; what a command needs is loaded when it runs. */
export function createProgram(io: Io): Command {
  const program = new Command('quillpath')
    .description('Arrow flight, calibrated sight marks and true-scale tapes from what an archer can measure.')
    .version(VERSION)
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err })
    .showHelpAfterError('(quillpath --help lists the commands, quillpath COMMAND --help explains one)');
  for (const make of COMMANDS) program.addCommand(make(io).copyInheritedSettings(program));
  return program;
}

/** Run one command line (without the program's name) and give the exit code. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  try {
    await createProgram(io).parseAsync([...argv], { from: 'user' });
    return EXIT.done;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.refused;
    const { reportError } = await import('./report-error.ts');
    return reportError(error, io, argv.includes('--json'));
  }
}
