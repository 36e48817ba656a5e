import { writeSync } from 'node:fs';
import process from 'node:process';
import { asksForVersion, VERSION } from '../version.ts';

const STANDARD_OUTPUT = 1;

/** @returns whether the version is asked for and was told; one that cannot be printed is left to the program, which says why */
function toldVersion(): boolean {
  if (!asksForVersion(process.argv.slice(2))) return false;
  try {
    writeSync(STANDARD_OUTPUT, `${VERSION}\n`);
    return true;
  } catch {
    return false;
  }
}

// The version is told before anything of the program is read.
if (!toldVersion()) void import('./start-program.ts').then(({ startProgram }) => startProgram(__filename));
