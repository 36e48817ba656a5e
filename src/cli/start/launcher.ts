import { writeSync } from 'node:fs';
import process from 'node:process';
import { VERSION } from '../version.ts';

const STANDARD_OUTPUT = 1;
const [, , first, ...more] = process.argv;

/** @returns whether the version is asked for and was told; one that cannot be printed is left to the program, which says why */
function toldVersion(): boolean {
  if (more.length > 0 || (first !== '--version' && first !== '-V')) return false;
  try {
    writeSync(STANDARD_OUTPUT, `${VERSION}\n`);
    return true;
  } catch {
    return false;
  }
}

// The version is told before anything of the program is read.
if (!toldVersion()) void import('./start-program.ts').then(({ startProgram }) => startProgram(__filename));
