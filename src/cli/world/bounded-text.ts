import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { LONGEST_TEXT } from '../../setup/longest-text.ts';
import { codeOf } from './file-words.ts';
import { INPUT_NAMES } from './input-names.ts';

const INPUT = 0;
/** A pipe holds so much at once on common systems; more only costs memory. */
const CHUNK = 65_536;
/** Between two looks at a pipe that has nothing yet, ms. */
const PAUSE = 20;
/** A character takes at most so many bytes of UTF-8 for every unit that a text is counted in. */
const BYTES_PER_UNIT = 3;
/** What is longer is longer than a setup may be, whatever its characters, so that the reader of setups refuses it. */
const MOST_BYTES = BYTES_PER_UNIT * LONGEST_TEXT + 1;

/**
 * A file as text, or standard input for "-", however slowly it comes; never more of it than shows that it is too long for a
 * setup, as a device or a pipe may have no end.
 *
 * @throws what the system says
 */
export function boundedText(path: string): string {
  if (INPUT_NAMES.includes(path)) return textOf(INPUT);
  const file = openSync(path, constants.O_RDONLY);
  try {
    return textOf(file);
  } finally {
    closeSync(file);
  }
}

function textOf(file: number): string {
  if (fstatSync(file).isDirectory()) throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
  const parts: Buffer[] = [];
  for (let left = MOST_BYTES; left > 0; ) {
    const part = Buffer.alloc(Math.min(CHUNK, left));
    const count = readWhenReady(file, part);
    if (count === 0) break;
    parts.push(part.subarray(0, count));
    left -= count;
  }
  return Buffer.concat(parts).toString('utf8');
}

/** A pipe that another program set not to wait says EAGAIN until something comes; some systems say EOF at the end. */
function readWhenReady(file: number, part: Buffer): number {
  for (;;)
    try {
      return readSync(file, part);
    } catch (error) {
      if (codeOf(error) === 'EOF') return 0;
      if (codeOf(error) !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
    }
}
