/** A decimal number as it may stand at the start of a quantity, as the source of a pattern. */
export const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;

const AT_THE_START = new RegExp(`^${NUMBER}`);

/** A text in two: the number that it begins with, and the rest; undefined when it begins with none. */
export function leadingNumber(text: string): { readonly number: string; readonly rest: string } | undefined {
  const trimmed = text.trim();
  const [number] = AT_THE_START.exec(trimmed) ?? [];
  return number === undefined ? undefined : { number, rest: trimmed.slice(number.length).trim() };
}
