#!/usr/bin/env node
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname } from 'node:path';
import process from 'node:process';
import type { Io } from './io.ts';
import { run } from './run.ts';

/** As a shell reports a program that a Ctrl-C ended: 128 and the signal's number. */
const EXIT_INTERRUPTED = 130;

/** Written beside its final name first, so that a full disk or a Ctrl-C leaves no half file under that name. */
function writeWhole(path: string, content: string | Uint8Array): void {
  const beside = `${path}.${process.pid}.part`;
  mkdirSync(dirname(path), { recursive: true });
  try {
    writeFileSync(beside, content);
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

const io: Io = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  readText: (path) => readFileSync(path === '-' ? 0 : path, 'utf8'),
  readBytes: (path) => readFileSync(path),
  exists: existsSync,
  writeWhole,
  now: () => new Date(),
  columns: process.stdout.isTTY ? process.stdout.columns : null,
  watched: process.stderr.isTTY === true,
  // The bundler puts worker.ts beside this file.
  pool: async () =>
    (await import('./worker-pool.ts')).threadPool(
      new URL('./worker.js', import.meta.url),
      availableParallelism(),
    ),
};

// A reader that stops early (`| head`) is not a failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

// Whatever was to be written is written whole or not at all, so a Ctrl-C need only take the progress bar away.
process.on('SIGINT', () => {
  if (io.watched === true) process.stderr.write('\r\u001b[K');
  process.exit(EXIT_INTERRUPTED);
});

process.exitCode = await run(process.argv.slice(2), io);
