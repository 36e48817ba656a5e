import { KEY_MEANINGS, type KeyMeaning } from './key-meaning.ts';
import { leaf } from './leaf.ts';

const EXAMPLE = { allowed: 'a day as year, month and day, up to 2100', write: '"2026-04-18"' } as const;
const LAST_YEAR = 2100;

/** A day of the calendar, `2026-04-18`. It stays a text, which sorts as the days do. */
export const day = (meaning: KeyMeaning) =>
  leaf<string>(
    () => EXAMPLE,
    (text) => {
      const trimmed = text.trim();
      return isDay(trimmed) ? { value: trimmed } : { refusal: { ...EXAMPLE, reason: `"${text}" is no day` } };
    },
  ).register(KEY_MEANINGS, meaning);

/** A day that exists: a date of 30 February would otherwise become one of March. */
function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || Number(text.slice(0, 4)) > LAST_YEAR) return false;
  const found = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(found.getTime()) && found.toISOString().startsWith(text);
}
