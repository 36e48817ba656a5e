import type { Round, Step } from '../../advice/tuning/next-step.ts';
import { TUNING_CHANGES, type TuningChange } from '../../bow/tuning-steps.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import type { Table } from '../../documents/table/table.ts';

import { archerSpread } from '../../setup/assemble/archer-spread.ts';
import type { TuningEntry } from '../../setup/schema/schema.ts';
import type { TuningRecord } from '../../setup/tuning/open-tuning.ts';
import type { Session } from '../session.ts';
import { roundsOf } from './rounds.ts';

/** One round of the log with its number in it. */
export interface Logged {
  readonly entry: TuningEntry;
  readonly index: number;
}

/** What every step is answered from. */
export interface Evening {
  readonly session: Session;
  readonly record: TuningRecord;
  readonly rounds: readonly Round[];
  /** Standard deviation of one arrow per metre of range. */
  readonly arrowSd: number;
}

/** What one step found. */
export interface StepAnswer {
  /** In a word or two, for programs. */
  readonly verdict: string;
  readonly done: boolean;
  /** The first line: what was found and what to do. */
  readonly line: string;
  readonly paragraphs: readonly string[];
  readonly tables: readonly Table[];
  readonly plots: readonly Plot[];
  readonly notes: readonly string[];
  /** Under the keys of the contract. */
  readonly data: object;
}

export const NO_MORE: Pick<StepAnswer, 'paragraphs' | 'tables' | 'plots' | 'notes'> = {
  paragraphs: [],
  tables: [],
  plots: [],
  notes: [],
};

export function eveningOf(session: Session, record: TuningRecord): Evening {
  return { session, record, arrowSd: archerSpread(session), rounds: roundsOf(record.log) };
}

/** The rounds of a step. */
export const loggedOf = ({ record }: Pick<Evening, 'record'>, step: Step): readonly Logged[] =>
  record.log.map((entry, index) => ({ entry, index })).filter(({ entry }) => entry.step === step);

/** Those of the rounds that were shot since the last of these changes. */
export function sinceChange(
  { rounds }: Pick<Evening, 'rounds'>,
  logged: readonly Logged[],
  changes: readonly TuningChange[],
): readonly Logged[] {
  const last = rounds.findLastIndex(({ changed }) => changed.some((change) => changes.includes(change)));
  return logged.filter(({ index }) => index > last);
}

/** All that alters how the arrow leaves, but for the rest, whose places are compared with one another. */
export const BUT_REST: readonly TuningChange[] = TUNING_CHANGES.filter(
  (change) => !['rest', 'extension', 'level'].includes(change),
);

/** A value that the reader of the log has made sure of. @throws RangeError when it is not there */
export function needed<T>(value: T | undefined, key: string): T {
  if (value === undefined) throw new RangeError(`the log has no ${key} where its reader found one`);
  return value;
}
