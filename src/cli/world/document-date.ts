import { isDay, localDay, utcDay } from '../../quantities/calendar-day.ts';
import type { Io } from '../io.ts';
import { CommandLineError } from './command-line-error.ts';

/** What a document says of when it was made. */
export interface DocumentDate {
  /** The day that is printed. */
  readonly day: string;
  /** What a PDF names as its making, to the second. */
  readonly madeAt: Date;
}

/** The last second of the year 9999: a PDF writes a year with four digits. */
const LAST_SECOND = 253_402_300_799;

/**
 * When a document is dated: on the day that was asked for, else at `SOURCE_DATE_EPOCH`, else now where the archer is.
 *
 * A PDF names a moment, and a viewer may show it in the time of its own place; noon at Greenwich is the same day from 12 hours
 * behind to 11 ahead. `SOURCE_DATE_EPOCH` counts seconds at Greenwich, so its day is the one there whatever the time zone.
 *
 * @param asked the day of `--date`
 * @source reproducible-builds.org, "SOURCE_DATE_EPOCH specification", version 1.1, sections 4.1 and 4.2: whole seconds since 1970
 *   as `date +%s` prints them, used in place of the current time; a build should fail when they cannot be read (from memory)
 * @throws CommandLineError when neither can be read
 */
export function documentDate(
  { now, sourceDateEpoch }: Pick<Io, 'now' | 'sourceDateEpoch'>,
  asked: string | undefined,
): DocumentDate {
  if (asked !== undefined) {
    if (isDay(asked)) return { day: asked, madeAt: new Date(`${asked}T12:00:00Z`) };
    throw new CommandLineError(
      `--date: "${asked}" is no day`,
      'Write year, month and day, up to 2100: --date 2026-04-18.',
    );
  }
  if (sourceDateEpoch !== undefined) {
    const madeAt = new Date(1000 * secondsOf(sourceDateEpoch));
    return { day: utcDay(madeAt), madeAt };
  }
  const madeAt = now();
  return { day: localDay(madeAt), madeAt };
}

function secondsOf(text: string): number {
  const seconds = Number(text);
  if (/^(0|[1-9]\d*)$/.test(text) && seconds <= LAST_SECOND) return seconds;
  throw new CommandLineError(
    `SOURCE_DATE_EPOCH is "${text}", which is no date for a document`,
    'Set it to whole seconds since 1970, as date +%s prints them, or unset it, or write --date 2026-04-18.',
  );
}
