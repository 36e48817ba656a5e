import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, it } from 'vitest';
import type { Asked } from '../../src/page/answers/answer.ts';
import { type Sitting, satOrAstray, sitting } from './field-actions.ts';
import { optionsSaid, saidOrAstray } from './page-options.ts';

const SEED = 20_261_126;
/** A busy machine takes several times as long as an idle one, which needs some ten seconds. */
const TIMEOUT = 600_000;

it(
  'whatever is typed into the fields of a form stands in the text, or the form says why not',
  () => fc.assert(fc.property(sitting, satOrAstray), { seed: SEED, numRuns: 250 }),
  TIMEOUT,
);

it(
  'whatever is typed into the options of a question has an answer, or a reason in the words of the page',
  () => fc.assert(fc.asyncProperty(optionsSaid, saidOrAstray), { seed: SEED, numRuns: 200 }),
  TIMEOUT,
);

describe('what once went wrong on the page', () => {
  const kept = <T>(name: string): readonly T[] => JSON.parse(readFileSync(`tests/fuzz/kept/${name}`, 'utf8'));
  it.each(kept<Sitting>('sittings.json'))('%j', (sat) => satOrAstray(sat));
  it.each(kept<Asked>('page-options.json'))('%j', (asked) => saidOrAstray(asked));
});
