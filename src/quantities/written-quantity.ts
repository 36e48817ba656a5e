import type { Unit } from 'mathjs';
import type { Dimension } from './dimension.ts';
import { isOfDimension } from './dimension-of.ts';
import { parseUnit } from './units.ts';

const PLAIN_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** What mathjs makes of a text that may be a quantity of a dimension; undefined when that is not a finite number with a unit. */
export function writtenQuantity(text: string, dimension: Dimension): Unit | undefined {
  try {
    const written = parseUnit(tidy(text, dimension));
    // mathjs leaves the value null where its types promise a number: a unit without a number
    return typeof written.value === 'number' && Number.isFinite(written.value) ? written : undefined;
  } catch {
    return undefined; // mathjs says where it stopped; explain.ts says why, in the archer's words
  }
}

/** Whether a text would do as a quantity of a dimension. */
export function isQuantity(text: string, dimension: Dimension): boolean {
  const written = writtenQuantity(text, dimension);
  return written !== undefined && isOfDimension(written, dimension);
}

/** Spellings that are common on paper and unknown to mathjs. */
function tidy(text: string, dimension: Dimension): string {
  const spelled = text
    .trim()
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/\u2212/g, '-')
    .replace(/\u00b0\s*(?=[FCfc]\b)/g, ' deg')
    .replace(/\bdeg([fc])\b/g, (_, letter: string) => `deg${letter.toUpperCase()}`)
    .replace(/\u00b0/g, ' deg')
    .replace(/%/g, ' percent')
    .replace(/[\u00b5\u03bc]/g, 'u')
    .replace(/\u00b2/g, '^2')
    .replace(/\u00b3/g, '^3')
    .replace(/\u00b7/g, ' ');
  // to mathjs 59 F is a capacitance and 15 C a charge
  if (dimension === 'temperature')
    return spelled.replace(/([\d.\s])([FC])$/, (_, before: string, scale: string) => `${before} deg${scale}`);
  if (dimension === 'ratio' && PLAIN_NUMBER.test(spelled)) return `${spelled} unity`;
  return spelled;
}
