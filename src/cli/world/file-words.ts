import { CommandLineError } from './command-line-error.ts';

/** What the name on the command line is wrong for, and what to write instead. */
const WRITING: Readonly<Record<string, readonly [why: string, write: string]>> = {
  EISDIR: ['is a folder', 'Name a file in it.'],
  ENOTDIR: ['a part of the name is a file, not a folder', 'Name a folder that exists, or a new one.'],
  EEXIST: ['a part of the name is a file, not a folder', 'Name a folder that exists, or a new one.'],
  ENOENT: ['the folder does not exist and cannot be created', 'Name a file in a folder that exists.'],
  ENAMETOOLONG: ['the name is too long', 'Choose a shorter one.'],
  ELOOP: ['the link points back to itself', 'Choose another name.'],
};

/** What the world outside refuses whatever the name. */
const REFUSED: Readonly<Record<string, string>> = {
  EACCES: 'no permission to write it: ask for permission, or choose another name',
  EPERM: 'no permission to write it: ask for permission, or choose another name',
  EROFS: 'nothing can be written there: choose a place on another disk',
  ENOSPC: 'the disk is full: make room, or choose a place on another disk',
  EDQUOT: 'your disk quota is used up: make room, or choose a place on another disk',
  EFBIG: 'the file would be larger than is allowed there: choose a place on another disk',
  EXDEV: 'it cannot be put in its place: choose a name in another folder',
  EPIPE: 'nobody reads what is written to it: choose another name',
  EMFILE: 'too many files are open: close some programs and try again',
  ENFILE: 'too many files are open: close some programs and try again',
  EIO: 'the disk does not answer: choose a place on another disk',
  EBUSY: 'another program is using it: close that program and try again',
  ETXTBSY: 'another program is using it: close that program and try again',
};

export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

/** Whether no file more can be opened, by this program or by any. */
export const isTooManyOpen = (code: string): boolean => code === 'EMFILE' || code === 'ENFILE';

/** A failed write in an archer's words; what is not known here comes back as it is. */
export function writingError(error: unknown, path: string): unknown {
  const code = codeOf(error);
  const [why, write] = WRITING[code] ?? [];
  if (why !== undefined && write !== undefined) return new CommandLineError(`${path}: ${why}`, write);
  const refused = REFUSED[code];
  return refused === undefined ? error : Object.assign(new Error(`${path}: ${refused}.`), { code });
}

/** What was to be read: a setup file, or what an option names: `--against`, in its words "the rows of a tape...". */
export type Wanted = 'setup' | { readonly flag: string; readonly what: string };

/** A failed read of a file: what is wrong with the name. */
export function readingError(error: unknown, named: string, wanted: Wanted = 'setup'): CommandLineError {
  const code = codeOf(error);
  const isSetup = wanted === 'setup';
  const path = isSetup ? named : `${wanted.flag}: ${named}`;
  const name = isSetup ? 'Give the name of a setup file.' : `Give the name of a file: ${wanted.what}.`;
  if (named === '-')
    return new CommandLineError(
      'standard input cannot be read',
      isSetup ? 'Give the name of a setup file, or send one: quillpath check - < setup.yaml.' : name,
    );
  if (code === 'EISDIR') return new CommandLineError(`${path}: is a folder`, 'Name a file in it.');
  if (code === 'EACCES' || code === 'EPERM')
    return new CommandLineError(
      `${path}: no permission to read it`,
      'Ask for permission, or choose another name.',
    );
  if (code === 'ENAMETOOLONG') return new CommandLineError(`${path}: the name is too long`, name);
  if (code === 'ELOOP') return new CommandLineError(`${path}: the link points back to itself`, name);
  if (isTooManyOpen(code))
    return new CommandLineError(`${path}: too many files are open`, 'Close some programs and try again.');
  if (code === 'ENOTDIR')
    return new CommandLineError(`${path}: a part of the name is a file, not a folder`, name);
  if (code === 'ENOENT')
    return new CommandLineError(
      `${path}: there is no such file`,
      isSetup && /\.ya?ml$/i.test(named)
        ? `${name.slice(0, -1)}; "quillpath new ${named}" writes one to start from.`
        : name,
    );
  return new CommandLineError(`${path}: it cannot be read${code === '' ? '' : ` (${code})`}`, name);
}
