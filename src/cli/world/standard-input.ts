import { fstatSync, readFileSync, readSync } from 'node:fs';
import { codeOf } from './file-words.ts';

const INPUT = 0;
/** A pipe holds so much at once on common systems; more only costs memory. */
const CHUNK = 65_536;
/** Between two looks at a pipe that has nothing yet, ms. */
const PAUSE = 20;

/** A file as text; "-" is standard input to its end, however slowly it comes. @throws what the system says */
export const readText = (path: string): string =>
  path === '-' ? standardInput() : readFileSync(path, 'utf8');

function standardInput(): string {
  if (fstatSync(INPUT).isDirectory()) throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
  const parts: Buffer[] = [];
  for (;;) {
    const part = Buffer.alloc(CHUNK);
    const count = readWhenReady(part);
    if (count === 0) return Buffer.concat(parts).toString('utf8');
    parts.push(part.subarray(0, count));
  }
}

/** A pipe that another program set not to wait says EAGAIN until something comes; some systems say EOF at the end. */
function readWhenReady(part: Buffer): number {
  for (;;)
    try {
      return readSync(INPUT, part);
    } catch (error) {
      if (codeOf(error) === 'EOF') return 0;
      if (codeOf(error) !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
    }
}
