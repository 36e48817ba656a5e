import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { boot, type Parts } from './boot.ts';
import { keptCode } from './kept-code.ts';

/** What the program's script gives when it is not itself the file that Node was started with. */
type Start = (ofNode: NodeJS.Require, here: string) => void;

interface Piece {
  readonly script: Script;
  /** Whether its code need not be compiled. */
  readonly isKept: boolean;
}

const folder = join(__dirname, 'cli');

/** Starts the program with its code as it was compiled before, where that is there and sound. Without, it only starts slower. */
export function startProgram(launcher: string): void {
  const here = pathToFileURL(launcher).href;
  const core = compiled('core');
  if (core === undefined || !core.isKept) plainProgram()(require, here);
  else boot(partsOf(core), require, here, () => partsOf(compiled('paper')));
}

/**
 * One of the two pieces in which the build keeps the program with its code: what draws on paper, a third of it, and all the rest.
 * V8 refuses code that another version or machine has made; nothing when the build kept no pieces.
 */
function compiled(piece: 'core' | 'paper'): Piece | undefined {
  const filename = join(folder, 'kept', `${piece}.js`);
  const source = sourceOf(filename);
  if (source === undefined) return undefined;
  const cachedData = keptCode(source, `${filename}.cache`);
  // The pieces hold nothing but ASCII, which is read fastest as Latin 1.
  const script = new Script(source.toString('latin1'), { filename, ...(cachedData && { cachedData }) });
  return { script, isKept: cachedData !== undefined && script.cachedDataRejected !== true };
}

const partsOf = (piece: Piece | undefined): Parts => piece?.script.runInThisContext() ?? {};

function sourceOf(file: string): Buffer | undefined {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}

/**
 * Node 22 and later keep a part of the code themselves; what is wrong with the place they keep it in, they pass over in silence.
 */
function plainProgram(): Start {
  Object(require('node:module')).enableCompileCache?.();
  return require(join(folder, 'quillpath.js'));
}
