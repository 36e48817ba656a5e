import { existsSync } from 'node:fs';
import process from 'node:process';
import { EXIT } from './exit.ts';
import type { Io } from './io.ts';
import { run } from './run.ts';
import { boundedText } from './world/bounded-text.ts';
import { isSameFile } from './world/same-file.ts';
import { writeWhole } from './world/whole-file.ts';

let stderr: typeof process.stderr | undefined;

/** Opened when there is something to write: most runs have nothing, and to open a terminal or a pipe takes a while. */
function standardError(): typeof process.stderr {
  // When it is closed too, there is nowhere left to report that.
  stderr ??= process.stderr.on('error', () => process.exit(EXIT.failed));
  return stderr;
}

const io: Io = {
  out: (text) => process.stdout.write(text),
  err: (text) => standardError().write(text),
  readText: boundedText,
  exists: existsSync,
  isSameFile,
  writeWhole,
  fonts: () => import('./world/embedded-fonts.ts'),
  now: () => new Date(),
  sourceDateEpoch: process.env['SOURCE_DATE_EPOCH'],
  columns: process.stdout.isTTY ? process.stdout.columns : null,
  get watched() {
    return standardError().isTTY === true;
  },
  asker: () => {
    const { stdin: input, stdout: output } = process;
    if (!input.isTTY || !output.isTTY) return null;
    return async (prompt: string) => (await import('./world/ask-line.ts')).askLine({ input, output }, prompt);
  },
  pool: async () => {
    const [{ availableParallelism }, { threadPool }, { interruptible }] = await Promise.all([
      import('node:os'),
      import('./world/worker-pool.ts'),
      import('./world/interruptible.ts'),
    ]);
    // A thread starts with the file that this process was started with.
    const pool = threadPool(new URL(import.meta.url), availableParallelism());
    return interruptible(pool, process, () => {
      if (io.watched === true) standardError().write('\r\u001b[K');
      process.exit(EXIT.interrupted);
    });
  },
};

// A reader that stops early (`| head`) is not a failure. Anything else that cannot be printed is one, though not a bug.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
  const why = error.code === 'ENOSPC' ? 'the disk is full' : (error.code ?? error.message);
  standardError().write(`The answer could not be printed: ${why}.\n`);
  process.exit(EXIT.failed);
});

void run(process.argv.slice(2), io).then((code) => {
  process.exitCode = code;
  setImmediate(endNow);
});

/**
 * Nothing is left to do but to print, which is done except where a pipe is full. Left to end by itself, Node would first finish
 * compiling what will not run again.
 */
function endNow(): void {
  const isWritten = stderr === undefined || stderr.writableLength === 0;
  if (process.stdout.writableLength === 0 && isWritten) process.exit();
}
