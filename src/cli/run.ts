import { EXIT } from './exit.ts';
import type { Io } from './io.ts';
import { asksForVersion, VERSION } from './version.ts';
import { codeOf, isTooManyOpen } from './world/file-words.ts';

/** Run one command line (without the program's name) and give the exit code. Asked for the version, nothing else is loaded. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  if (asksForVersion(argv)) {
    io.out(`${VERSION}\n`);
    return EXIT.done;
  }
  const told: Io = { ...io, err: (text) => io.err(withShortWords(text, argv)) };
  try {
    const { runProgram } = await import('./program.ts');
    return await runProgram(argv, told);
  } catch (error) {
    return reported(error, argv, told);
  }
}

/** The words for errors are a file of the program too, which may be what cannot be loaded. */
async function reported(error: unknown, argv: readonly string[], io: Io): Promise<number> {
  try {
    const { reportError } = await import('./output/report-error.ts');
    return reportError(error, io, argv.includes('--json'));
  } catch (failure) {
    const why = isTooManyOpen(codeOf(failure))
      ? 'too many files are open. Close some programs and try again'
      : `${failure instanceof Error ? failure.message : String(failure)}. Install it again`;
    io.err(`The program cannot load its own files: ${why}.\n`);
    return EXIT.failed;
  }
}

/** Enough of a word to know it by, characters; the name of a file is rarely longer. */
const LONGEST_WORD = 120;

/** What is told of a command line, with the words of it that have no end cut short. */
function withShortWords(text: string, argv: readonly string[]): string {
  const long = argv
    .flatMap((word) => [word, word.slice(word.indexOf('=') + 1)])
    .filter((word) => word.length > LONGEST_WORD);
  return long.reduce((told, word) => told.replaceAll(word, `${word.slice(0, LONGEST_WORD)}…`), text);
}
