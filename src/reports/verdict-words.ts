import type { Verdict } from '../calibration/verdict.ts';

/** Where a fitted number comes from, in a word or two. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  measured: 'marks',
  'mostly prior': 'measurement',
  'not separable': 'both, tied',
};
