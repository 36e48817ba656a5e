import { CommandLineError } from './command-line-error.ts';

/** What the name on the command line is wrong for, and what to write instead. */
const WRITING: Readonly<Record<string, readonly [why: string, write: string]>> = {
  EISDIR: ['is a folder', 'Write the name of a file in it.'],
  ENOTDIR: ['a part of the name is a file, not a folder', 'Write a folder that is there, or a new one.'],
  EEXIST: ['a part of the name is a file, not a folder', 'Write a folder that is there, or a new one.'],
  ENOENT: ['the folder is not there and cannot be made', 'Write a name in a folder that is there.'],
  ENAMETOOLONG: ['the name is too long', 'Write a shorter one.'],
  ELOOP: ['the link points back to itself', 'Write another name.'],
};

/** What the world outside refuses whatever the name. */
const REFUSED: Readonly<Record<string, string>> = {
  EACCES: 'it may not be written: ask for the right to, or write another name',
  EPERM: 'it may not be written: ask for the right to, or write another name',
  EROFS: 'nothing can be written there: write a name on another disk',
  ENOSPC: 'the disk is full: make room, or write a name on another disk',
  EDQUOT: 'your share of the disk is full: make room, or write a name on another disk',
  EBUSY: 'another program holds it: close that, and try again',
  ETXTBSY: 'another program holds it: close that, and try again',
};

export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

/** A failed write in an archer's words; what is not known here comes back as it is. */
export function writingError(error: unknown, path: string): unknown {
  const code = codeOf(error);
  const [why, write] = WRITING[code] ?? [];
  if (why !== undefined && write !== undefined) return new CommandLineError(`${path}: ${why}`, write);
  const refused = REFUSED[code];
  return refused === undefined ? error : Object.assign(new Error(`${path}: ${refused}.`), { code });
}

/** A failed read of a setup file: what is wrong with the name. */
export function readingError(error: unknown, path: string): CommandLineError {
  const code = codeOf(error);
  const name = 'Write the name of a setup file.';
  if (path === '-')
    return new CommandLineError(
      'standard input cannot be read',
      'Write the name of a setup file, or send one: quillpath check - < setup.yaml.',
    );
  if (code === 'EISDIR')
    return new CommandLineError(`${path}: is a folder`, 'Write the name of a file in it.');
  if (code === 'EACCES' || code === 'EPERM')
    return new CommandLineError(
      `${path}: it may not be read`,
      'Ask for the right to, or write another name.',
    );
  if (code === 'ENOTDIR')
    return new CommandLineError(`${path}: a part of the name is a file, not a folder`, name);
  if (code === 'ENOENT')
    return new CommandLineError(
      `${path}: there is no such file`,
      /\.ya?ml$/i.test(path) ? `${name.slice(0, -1)}; "quillpath new ${path}" makes one.` : name,
    );
  return new CommandLineError(`${path}: it cannot be read${code === '' ? '' : ` (${code})`}`, name);
}
