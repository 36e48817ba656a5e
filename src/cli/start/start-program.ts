import { readFileSync } from 'node:fs';
import * as nodeModule from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { keptCode } from './kept-code.ts';

/** What the program's script gives when it is not itself the file that Node was started with. */
type Start = (ofNode: NodeJS.Require, here: string) => void;

const program = join(__dirname, 'cli', 'quillpath.js');

/**
 * Starts the program with its code as it was compiled before: by Node itself where it can keep that, otherwise by the build, where
 * that is sound. Without either it only starts slower.
 */
export function startProgram(launcher: string): void {
  const start: Start = keepsCode() ? require(program) : compiled();
  start(require, pathToFileURL(launcher).href);
}

/** Node 22 and later keep what they compiled in a folder of their own; what is wrong with that folder, they pass over in silence. */
function keepsCode(): boolean {
  const { enableCompileCache } = Object(nodeModule);
  if (typeof enableCompileCache !== 'function') return false;
  enableCompileCache();
  return true;
}

function compiled(): Start {
  const source = readFileSync(program);
  const cachedData = keptCode(source, `${program}.cache`);
  if (cachedData === undefined) return require(program);
  // The script holds nothing but ASCII, which is read fastest as Latin 1.
  return new Script(source.toString('latin1'), { filename: program, cachedData }).runInThisContext();
}
