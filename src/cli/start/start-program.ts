import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { keptCode } from './kept-code.ts';

/** What the program's script gives when it is not itself the file that Node was started with. */
type Start = (ofNode: NodeJS.Require, here: string) => void;

const program = join(__dirname, 'cli', 'quillpath.js');

/** Starts the program with its code as it was compiled before, where that is there and sound. Without, it only starts slower. */
export function startProgram(launcher: string): void {
  const start: Start = keptProgram() ?? plainProgram();
  start(require, pathToFileURL(launcher).href);
}

/** The program with the code that the build kept; V8 refuses what another version or machine has made. */
function keptProgram(): Start | undefined {
  const source = readFileSync(program);
  const cachedData = keptCode(source, `${program}.cache`);
  if (cachedData === undefined) return undefined;
  // The script holds nothing but ASCII, which is read fastest as Latin 1.
  const script = new Script(source.toString('latin1'), { filename: program, cachedData });
  return script.cachedDataRejected === true ? undefined : script.runInThisContext();
}

/**
 * Node 22 and later keep a part of the code themselves; what is wrong with the place they keep it in, they pass over in silence.
 */
function plainProgram(): Start {
  Object(require('node:module')).enableCompileCache?.();
  return require(program);
}
