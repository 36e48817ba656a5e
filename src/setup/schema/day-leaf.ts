import { isDay } from '../../quantities/calendar-day.ts';
import { KEY_MEANINGS, type KeyMeaning } from './key-meaning.ts';
import { leaf } from './leaf.ts';

const EXAMPLE = { allowed: 'a day as year, month and day, up to 2100', write: '"2026-04-18"' } as const;

/** A day of the calendar, `2026-04-18`. It stays a text, which sorts as the days do. */
export const day = (meaning: KeyMeaning) =>
  leaf<string>(
    () => EXAMPLE,
    (text) => {
      const trimmed = text.trim();
      return isDay(trimmed) ? { value: trimmed } : { refusal: { ...EXAMPLE, reason: `"${text}" is no day` } };
    },
  ).register(KEY_MEANINGS, meaning);
