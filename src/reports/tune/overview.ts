import type { Table } from '../../documents/table/table.ts';
import { CHANGE_WORDS } from './stale-marks.ts';
import type { Standing } from './standing.ts';
import { STEP_WORDS } from './step-words.ts';

/** What is next, and why. */
export const nextLine = (next: Standing | null): string =>
  next === null
    ? 'All done: nothing is left to tune. Print the tape.'
    : `Next: ${next.step}. ${STEP_WORDS[next.step].reason}`;

/** A step a line: its state and what it found. */
export const stepTable = (standings: readonly Standing[]): Table => ({
  columns: [
    { name: 'step', unit: '' },
    { name: 'state', unit: '' },
    { name: 'entries', unit: '', digits: 0 },
    { name: 'found', unit: '' },
  ],
  rows: standings.map(({ step, state, entries, answer }) => [
    step,
    state,
    entries,
    entries === 0 && step !== 'marks' ? '' : firstSentence(answer.line),
  ]),
});

/** Up to the first full stop that ends a sentence. */
const firstSentence = (text: string): string => /^.*?\.(?=\s|$)/.exec(text)?.[0] ?? text;

export const changedWords = ({ changed }: Standing): string =>
  `${capital(changed.map((change) => CHANGE_WORDS[change]).join(' and '))} changed after it: do it again.`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
