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
    const { reportError } = await import('./output/report-error.ts');
    return reportError(error, io, argv.includes('--json'));
  }
}
