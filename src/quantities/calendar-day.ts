/** Later than this is a slip of the pen. */
const LAST_YEAR = 2100;

const FORM = /^\d{4}-\d{2}-\d{2}$/;

/** Whether a text is a day of the calendar, `2026-04-18`: a date of 30 February would otherwise become one of March. */
export function isDay(text: string): boolean {
  if (!FORM.test(text) || Number(text.slice(0, 4)) > LAST_YEAR) return false;
  const found = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(found.getTime()) && found.toISOString().startsWith(text);
}

/** The day at Greenwich, `2026-04-18`. */
export const utcDay = (instant: Date): string => instant.toISOString().slice(0, 10);

/** The day where the computer stands, which an archer would write; near midnight it is not the day at Greenwich. */
export const localDay = (instant: Date): string =>
  [
    String(instant.getFullYear()).padStart(4, '0'),
    String(instant.getMonth() + 1).padStart(2, '0'),
    String(instant.getDate()).padStart(2, '0'),
  ].join('-');
