import { TUNING_CHANGES, TUNING_STEPS, type TuningChange } from '../../bow/tuning-steps.ts';

/** The steps of a tuning evening in their order; the marks are what it is for. */
export const STEPS = [...TUNING_STEPS, 'marks'] as const;
export type Step = (typeof STEPS)[number];

const OF_THE_LAUNCH: readonly TuningChange[] = [
  'nock',
  'draw_length',
  'cams',
  'rest',
  'rest_forward',
  'arrow',
];

/** What makes the result of a step say no more how the bow shoots. */
const STALE_AFTER: Readonly<Record<Step, readonly TuningChange[]>> = {
  nock: ['nock'],
  draw: ['draw_length', 'cams'],
  paper: OF_THE_LAUNCH,
  start: ['draw_length'],
  torque: ['draw_length', 'cams', 'rest_forward'],
  arrows: ['arrow'],
  bare: OF_THE_LAUNCH,
  line: OF_THE_LAUNCH,
  level: ['level', 'extension'],
  marks: TUNING_CHANGES,
};

/** One round of the log, as far as the order of steps needs it. */
export interface Round {
  readonly date: string;
  readonly step: Step;
  /** What was altered after it. */
  readonly changed: readonly TuningChange[];
  /** Where the rest, the nocking point and the sight stood for it; null where it does not say. */
  readonly rest: string | null;
  readonly extension: number | null;
}

/** Something that was altered, between two rounds. */
export interface Alteration {
  readonly date: string;
  readonly change: TuningChange;
}

/** Everything that the rounds say was altered, in words or by standing elsewhere than the round before. */
export function alterations(rounds: readonly Round[]): readonly Alteration[] {
  const found: Alteration[] = [];
  let rest: string | null = null;
  let extension: number | null = null;
  for (const round of rounds) {
    const moved = (change: TuningChange): void => {
      found.push({ date: round.date, change });
    };
    if (round.rest !== null && rest !== null && round.rest !== rest) moved('rest');
    if (round.extension !== null && extension !== null && round.extension !== extension) moved('extension');
    rest = round.rest ?? rest;
    extension = round.extension ?? extension;
    for (const change of round.changed) found.push({ date: round.date, change });
  }
  return found;
}

/** What makes a step stale since a round of it: what was altered in words, and what stands elsewhere now than it did then. */
export function changedSince(step: Step, last: number, rounds: readonly Round[]): readonly TuningChange[] {
  const told = rounds.slice(last).flatMap(({ changed }) => changed);
  const stood = (key: 'rest' | 'extension', upTo: number) =>
    rounds.slice(0, upTo).findLast((round) => round[key] !== null)?.[key];
  const moved = (['rest', 'extension'] as const).filter((key) => {
    const [then, now] = [stood(key, last + 1), stood(key, rounds.length)];
    return then !== undefined && now !== then;
  });
  return STALE_AFTER[step].filter((change) => told.includes(change) || moved.some((key) => key === change));
}

export type StepState = 'open' | 'done' | 'stale' | 'skipped';

/** What is known of one step. */
export interface StepFacts {
  readonly step: Step;
  readonly done: boolean;
  readonly skipped: boolean;
  readonly changed: readonly TuningChange[];
}

export function stateOf({ done, skipped, changed }: StepFacts): StepState {
  if (skipped) return 'skipped';
  if (!done) return 'open';
  return changed.length > 0 ? 'stale' : 'done';
}

/** The first step in the order that is open or stale; null when nothing is left to do. */
export const nextStep = (facts: readonly StepFacts[]): StepFacts | null =>
  facts.find((step) => ['open', 'stale'].includes(stateOf(step))) ?? null;
