#!/usr/bin/env node
import { existsSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import process from 'node:process';
import { EXIT } from './exit.ts';
import type { Io } from './io.ts';
import { run } from './run.ts';
import { boundedText } from './world/bounded-text.ts';
import { isSameFile } from './world/same-file.ts';
import { writeWhole } from './world/whole-file.ts';

const io: Io = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  readText: boundedText,
  readBytes: (path) => readFileSync(path),
  exists: existsSync,
  isSameFile,
  writeWhole,
  now: () => new Date(),
  sourceDateEpoch: process.env['SOURCE_DATE_EPOCH'],
  columns: process.stdout.isTTY ? process.stdout.columns : null,
  watched: process.stderr.isTTY === true,
  ask:
    process.stdin.isTTY && process.stdout.isTTY
      ? async (prompt) =>
          (await import('./world/ask-line.ts')).askLine(
            { input: process.stdin, output: process.stdout },
            prompt,
          )
      : undefined,
  pool: async () => {
    const [{ threadPool }, { interruptible }] = await Promise.all([
      import('./world/worker-pool.ts'),
      import('./world/interruptible.ts'),
    ]);
    // The bundler puts worker.ts beside this file.
    const pool = threadPool(new URL('./worker.js', import.meta.url), availableParallelism());
    return interruptible(pool, process, () => {
      if (io.watched === true) process.stderr.write('\r\u001b[K');
      process.exit(EXIT.interrupted);
    });
  },
};

// A reader that stops early (`| head`) is not a failure. Anything else that cannot be printed is one, though not a bug.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
  const why = error.code === 'ENOSPC' ? 'the disk is full' : (error.code ?? error.message);
  process.stderr.write(`The answer could not be printed: ${why}.\n`);
  process.exit(EXIT.failed);
});

// Standard error is closed too, so there is nowhere left to report this.
process.stderr.on('error', () => process.exit(EXIT.failed));

process.exitCode = await run(process.argv.slice(2), io);
