import { EXIT } from './exit.ts';
import type { Io } from './io.ts';
import { VERSION } from './version.ts';

/** Run one command line (without the program's name) and give the exit code. Asked for the version, nothing else is loaded. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  const [first] = argv;
  if (argv.length === 1 && (first === '--version' || first === '-V')) {
    io.out(`${VERSION}\n`);
    return EXIT.done;
  }
  try {
    const { runProgram } = await import('./program.ts');
    return await runProgram(argv, io);
  } catch (error) {
    return reported(error, argv, io);
  }
}

/** The words for errors are a file of the program too, which may be what cannot be loaded. */
async function reported(error: unknown, argv: readonly string[], io: Io): Promise<number> {
  try {
    const { reportError } = await import('./output/report-error.ts');
    return reportError(error, io, argv.includes('--json'));
  } catch (failure) {
    const code = failure instanceof Error && 'code' in failure ? String(failure.code) : '';
    const why = TOO_MANY_OPEN.includes(code)
      ? 'too many files are open. Close some programs and try again'
      : `${failure instanceof Error ? failure.message : String(failure)}. Install it again`;
    io.err(`The program cannot load its own files: ${why}.\n`);
    return EXIT.failed;
  }
}

const TOO_MANY_OPEN = ['EMFILE', 'ENFILE'];
