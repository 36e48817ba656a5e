import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fchmodSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import process from 'node:process';
import { CommandLineError } from './command-line-error.ts';
import { codeOf, writingError } from './file-words.ts';

/**
 * The whole file appears under its name, or nothing does: it is written beside its final name first, so that a full disk or a
 * Ctrl-C leaves no half file. A link is written through, and stays a link. A file keeps its mode, and a read-only one its
 * content; other names that it has (hard links, as backups make them) keep what was there.
 *
 * @throws CommandLineError for a name that cannot be a file; an Error with a code for a disk that refuses
 */
export function writeWhole(path: string, content: string | Uint8Array): void {
  let beside: string | null = null;
  try {
    makeFolder(dirname(path));
    const target = behind(path);
    const there = statSync(target, { throwIfNoEntry: false });
    if (there?.isDirectory() === true)
      throw new CommandLineError(`${path}: is a folder`, 'Name a file in it.');
    if (there !== undefined && !there.isFile()) {
      // A device or a pipe has no name to take: it is written to as it is.
      writeFileSync(target, content);
      return;
    }
    if (there !== undefined) requireWritable(path, target, there.mode);
    sweep(dirname(target));
    const name = join(dirname(target), `.quillpath-${own()}-${someDigits()}${someDigits()}.part`);
    // The flag refuses a name that is taken, so that no link laid there is followed.
    const file = openSync(name, 'wx');
    beside = name;
    try {
      writeFileSync(file, content);
      if (there !== undefined) fchmodSync(file, there.mode & MODE_BITS);
      // Otherwise a power cut after the new name could leave an empty file under it.
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, target);
  } catch (error) {
    if (beside !== null) rmSync(beside, { force: true });
    throw writingError(error, path);
  }
}

/** Who may read, write and run a file, and who may write it. */
const MODE_BITS = 0o777;
const WRITABLE = 0o222;

/** A folder lets a file be replaced that is protected itself, and an administrator writes everything. */
function requireWritable(path: string, target: string, mode: number): void {
  if ((mode & WRITABLE) === 0)
    throw new CommandLineError(
      `${path}: is protected against writing`,
      'Choose another name, or take the protection off.',
    );
  accessSync(target, constants.W_OK);
}

/**
 * Eight hexadecimal digits. Nothing rests on nobody guessing them, and Node's cryptography, which has better ones, takes as long
 * to load as a table takes to print.
 */
const digits = (number: number): string => number.toString(16).padStart(8, '0');
const someDigits = (): string => digits(Math.floor(Math.random() * 16 ** 8));

/** This process among those of all machines that write to a folder: the machine in eight digits, and the process. */
const own = (): string => `${machine()}-${process.pid}`;

/** @source FNV-1a, the hash of 32 bits: its offset basis and its prime */
const machine = (): string =>
  digits(
    Buffer.from(hostname()).reduce((hash, byte) => Math.imul(hash ^ byte, 0x01000193) >>> 0, 0x811c9dc5),
  );

const LEFT_BEHIND = /^\.quillpath-([0-9a-f]{8})-(\d+)-[0-9a-f]{16}\.part$/;
/** No run writes one file for so long, ms. */
const STALE = 3_600_000;

/** Takes away what runs that were killed while they wrote have left in a folder. What cannot be taken away stays. */
function sweep(folder: string): void {
  for (const name of namesIn(folder))
    try {
      const [, from, id] = LEFT_BEHIND.exec(name) ?? [];
      if (from === undefined || id === undefined) continue;
      const path = join(folder, basename(name));
      const isOld = lstatSync(path).mtimeMs < Date.now() - STALE;
      if (isOld || (from === machine() && !isRunning(Number(id)))) rmSync(path, { force: true });
    } catch {
      // Another run has taken it away, or it belongs to somebody else.
    }
}

/** Whether a process of this machine is there, whoever's it is. */
function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return codeOf(error) !== 'ESRCH';
  }
}

/** A folder may be written to and yet not be listed. */
function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/**
 * Folder by folder: asked to create them all at once, Node 20 never stops trying inside a folder of the system that allows
 * none.
 */
function makeFolder(path: string): void {
  if (existsSync(path)) return;
  makeFolder(dirname(path));
  mkdirSync(path);
}

/** The file a link stands for. @throws CommandLineError for a link to nothing, as it would be made in a place nobody named */
function behind(path: string): string {
  if (existsSync(path)) return realpathSync(path);
  const link = lstatSync(path, { throwIfNoEntry: false });
  if (link?.isSymbolicLink() === true)
    throw new CommandLineError(
      `${path}: is a link to a file that does not exist`,
      'Choose another name, or create the file it points to.',
    );
  return path;
}
