import { type Alteration, alterations } from '../../advice/tuning/next-step.ts';
import type { TuningChange } from '../../bow/tuning-steps.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { SetupFile } from '../../setup/schema/schema.ts';
import type { Evening } from './step-answer.ts';

/** Marks that something was altered after. */
export interface StaleMarks {
  readonly ranges: readonly Metres[];
  readonly changes: readonly TuningChange[];
  /** Of the last of those changes. */
  readonly date: string;
}

/** A day as the calendar writes it; other texts cannot be put in order. */
const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** A level that was turned moves arrows aside and leaves the marks. */
const MOVES_MARKS = ({ change }: Alteration): boolean => change !== 'level';

/** The marks shot before a day on which the log says that something was altered; null when there are none. */
export function staleMarks(
  { marks = [] }: Pick<SetupFile, 'marks'>,
  { rounds }: Pick<Evening, 'rounds'>,
): StaleMarks | null {
  const altered = alterations(rounds).filter(MOVES_MARKS);
  const dated = marks.flatMap(({ date, range }) =>
    date !== undefined && DAY.test(date) ? [{ date, range }] : [],
  );
  const stale = dated.filter((mark) => altered.some(({ date }) => mark.date < date));
  if (stale.length === 0) return null;
  const first = stale.map(({ date }) => date).toSorted()[0] ?? '';
  const since = altered.filter(({ date }) => first < date);
  return {
    ranges: stale.map(({ range }) => si(range)),
    changes: [...new Set(since.map(({ change }) => change))],
    date:
      since
        .map(({ date }) => date)
        .toSorted()
        .at(-1) ?? '',
  };
}

/** Whether marks carry no day that could be put before or after a change. */
export const undatedMarks = ({ marks = [] }: Pick<SetupFile, 'marks'>): number =>
  marks.filter(({ date }) => date === undefined || !DAY.test(date)).length;

/** A change in an archer's words. */
export const CHANGE_WORDS: Readonly<Record<TuningChange, string>> = {
  nock: 'the string or its serving',
  draw_length: 'the draw length, and the peep with it',
  cams: 'the cams',
  rest: 'the rest',
  rest_forward: 'the rest, forward or back',
  extension: 'how far out the sight sits',
  arrow: 'the arrow',
  level: 'the level',
};
