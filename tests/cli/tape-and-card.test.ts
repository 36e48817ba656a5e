import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { tapeAndCard } from './tape-and-card.ts';

const PICTURE = 'examples/mountain-hunt/tape-and-card.svg';

/** `npm run golden` draws the picture anew, to be looked at before it is committed. */
if (process.env['REWRITE'] === 'yes') writeFileSync(PICTURE, await tapeAndCard());

it('the picture of the README is the tape and the card that the tool makes', async () => {
  expect(readFileSync(PICTURE, 'utf8')).toBe(await tapeAndCard());
  expect(readFileSync('README.md', 'utf8')).toContain(`](${PICTURE})`);
});
