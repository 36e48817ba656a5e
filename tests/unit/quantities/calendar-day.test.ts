import { describe, expect, it } from 'vitest';
import { isDay, localDay, utcDay } from '../../../src/quantities/calendar-day.ts';

describe('a day of the calendar', () => {
  it.each(['2026-04-18', '2024-02-29', '2100-12-31', '1999-01-01'])('%s is one', (text) =>
    expect(isDay(text)).toBe(true),
  );
  // 2026 and 2100 are no leap years: the Gregorian calendar.
  it.each(['2026-02-29', '2100-02-29', '2026-02-30', '2026-13-01', '2026-00-10', '2101-01-01', '26-04-18'])(
    '%s is none',
    (text) => expect(isDay(text)).toBe(false),
  );
  it.each(['', ' 2026-04-18', '2026-04-18T10:00', '18.04.2026', 'today', '२०२६-०४-१८'])(
    '"%s" is none',
    (text) => expect(isDay(text)).toBe(false),
  );
});

it('the local day is that of the wall clock, at the first and the last second of a day', () => {
  expect(localDay(new Date(2026, 0, 1, 0, 0, 0))).toBe('2026-01-01');
  expect(localDay(new Date(2026, 11, 31, 23, 59, 59))).toBe('2026-12-31');
  const early = new Date(2026, 2, 4);
  early.setFullYear(204);
  expect(localDay(early)).toBe('0204-03-04');
});

it('the day at Greenwich is the same whatever the zone', () => {
  expect(utcDay(new Date('2026-04-18T00:00:00Z'))).toBe('2026-04-18');
  expect(utcDay(new Date('2026-04-18T23:59:59+14:00'))).toBe('2026-04-18');
  expect(utcDay(new Date('2026-04-18T00:30:00+14:00'))).toBe('2026-04-17');
});
