import {
  existsSync,
  lstatSync,
  mkdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { CommandLineError } from './command-line-error.ts';
import { writingError } from './file-words.ts';

/**
 * The whole file appears under its name, or nothing does: it is written beside its final name first, so that a full disk or a
 * Ctrl-C leaves no half file. A link is written through, and stays a link.
 *
 * @param mark of this run: two at once then write beside each other
 * @throws CommandLineError for a name that cannot be a file; an Error with a code for a disk that refuses
 */
export function writeWhole(path: string, content: string | Uint8Array, mark: number): void {
  let beside: string | null = null;
  try {
    makeFolder(dirname(path));
    const target = behind(path);
    if (existsSync(target) && statSync(target).isDirectory())
      throw new CommandLineError(`${path}: is a folder`, 'Name a file in it.');
    if (existsSync(target) && !statSync(target).isFile()) {
      // A device or a pipe has no name to take: it is written to as it is.
      writeFileSync(target, content);
      return;
    }
    beside = `${target}.${mark}.part`;
    writeFileSync(beside, content);
    renameSync(beside, target);
  } catch (error) {
    if (beside !== null) rmSync(beside, { force: true });
    throw writingError(error, path);
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
