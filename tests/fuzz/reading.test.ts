import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readSetup } from '../../src/setup/read.ts';
import { readOrRefused } from './read-or-refused.ts';
import { brokenText } from './setup-texts.ts';

const SEED = 20_261_126;
const FILES = 10_000;
/** A busy machine takes several times as long as an idle one, which needs about a minute. */
const TIMEOUT = 900_000;

it(
  `of ${FILES} broken files each is read, or refused with problems that are complete`,
  () => {
    let read = 0;
    fc.assert(
      fc.property(brokenText, (text) => {
        if (readOrRefused(text, readSetup) !== null) read += 1;
      }),
      { seed: SEED, numRuns: FILES },
    );
    // Both happen often: neither everything is broken beyond reading, nor nothing broken at all.
    expect(read).toBeGreaterThan(FILES / 20);
    expect(read).toBeLessThan(FILES / 2);
  },
  TIMEOUT,
);
