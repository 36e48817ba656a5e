import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commandLine } from './command-lines.ts';
import { typedOrRefused } from './typed-or-refused.ts';

const SEED = 20_261_126;
const LINES = 1000;
/** A busy machine takes several times as long as an idle one, which needs some ten seconds. */
const TIMEOUT = 600_000;

it(
  `of ${LINES} command lines each is answered, or refused with a sentence that names what is wrong`,
  async () => {
    const codes: number[] = [];
    await fc.assert(
      fc.asyncProperty(commandLine, async (argv) => {
        codes.push(await typedOrRefused(argv));
      }),
      { seed: SEED, numRuns: LINES },
    );
    // Both happen often: neither is every line nonsense, nor every one sound.
    const answered = codes.filter((code) => code === 0).length;
    expect(answered).toBeGreaterThan(LINES / 10);
    expect(answered).toBeLessThan(LINES / 2);
  },
  TIMEOUT,
);

describe('command lines that once broke something', () => {
  const kept: readonly (readonly string[])[] = JSON.parse(
    readFileSync('tests/fuzz/kept/command-lines.json', 'utf8'),
  );
  it.each(kept.map((argv) => [argv]))('%j', async (argv) => {
    expect([0, 1, 2]).toContain(await typedOrRefused(argv));
  });
});
