import fc from 'fast-check';
import { expect, it } from 'vitest';
import { ASKED } from './asked-or-refused.ts';
import { openedAndAsked } from './opened-and-asked.ts';
import { extremeText } from './setup-texts.ts';

const SEED = 20_261_126;
const FILES = 250;
/** A busy machine takes several times as long as an idle one, which needs about a quarter of a minute. */
const TIMEOUT = 900_000;

it(
  `of ${FILES} files with extreme values, what is accepted is answered with numbers or refused with reasons`,
  async () => {
    let answered = 0;
    await fc.assert(
      fc.asyncProperty(extremeText, fc.nat(ASKED.length - 1), async (text, turn) => {
        answered += await openedAndAsked(text, turn);
      }),
      { seed: SEED, numRuns: FILES },
    );
    expect(answered).toBeGreaterThan(FILES / 2);
  },
  TIMEOUT,
);
