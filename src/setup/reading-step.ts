import { spokenNumber } from '../quantities/spoken-number.ts';
import { isRecord } from './key-path.ts';

/**
 * One of the last digit that the readings of the marks are written to, 0.1 for 12.4: how finely the sight was read. The finest of
 * the list counts, as 19 among tenths stands for 19.0.
 *
 * @param file plain data, every value as the text it was typed as
 * @returns undefined when no mark has a reading
 */
export function readingStepOf(file: unknown): number | undefined {
  const days = listIn(file, 'days');
  const marks = [file, ...days].flatMap((part) => listIn(part, 'marks'));
  const digits = marks.flatMap((mark) =>
    isRecord(mark) && typeof mark['reading'] === 'string' ? [decimalsOf(mark['reading'])] : [],
  );
  return digits.length === 0 ? undefined : 10 ** -Math.max(...digits);
}

const listIn = (section: unknown, key: string): readonly unknown[] => {
  const list = isRecord(section) ? section[key] : undefined;
  return Array.isArray(list) ? list : [];
};

/** Of a fraction, as many as its size asks for: 31 1/2 was read to tenths, 31 1/4 to hundredths. */
const decimalsOf = (text: string): number =>
  /[.,](\d+)/.exec(spokenNumber(text)?.values[0] ?? text)?.[1]?.length ?? NO_DECIMALS;
const NO_DECIMALS = 0;
