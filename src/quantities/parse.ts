import type { Unit } from 'mathjs';
import { type Dimension, dimensionOf, isOfDimension, type SiUnit } from './dimension.ts';
import { whyUnreadable, whyWrongKind } from './explain.ts';
import { type Quantity, si } from './quantity.ts';
import type { Examples } from './suggestion.ts';
import { parseUnit } from './units.ts';

/** Beyond this it is not a quantity that a person typed. */
const LONGEST_TEXT = 80;

const PLAIN_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * A quantity as an archer writes it, in SI: `28.5 in`, `452gr`, `59 °F`, `50 %`. A ratio may be a bare number.
 *
 * @param examples a quantity that would do, to show when this one does not; the dimension's own two by default
 * The `+ 0` below makes a zero of a negative zero.
 *
 * @throws QuantityError for a text without a finite number, without a unit, or with a unit of another kind
 * @source mathjs reads the text and converts it; units.ts has the units added to it
 * @checked reference/unit-definitions
 */
export function parseQuantity<D extends Dimension>(
  text: string,
  dimension: D,
  examples?: Examples,
): Quantity<SiUnit[D]> {
  const written = read(text, dimension, examples);
  return si(dimension === 'temperature' ? written.toNumber('K') : written.value + 0);
}

/** The same for a difference or a standard uncertainty: 9 degF of difference is 5 K. */
export function parseDifference<D extends Dimension>(
  text: string,
  dimension: D,
  examples?: Examples,
): Quantity<SiUnit[D]> {
  return si(read(text, dimension, examples).value + 0);
}

/** What mathjs makes of the text: finite, and of the right kind. Its `value` is in SI, before a temperature's offset. */
function read(text: string, dimension: Dimension, examples: Examples | undefined): Unit {
  const request = { text, dimension, examples };
  if (text.length > LONGEST_TEXT) throw whyUnreadable(request);
  const tidied = tidy(text, dimension);
  let written: Unit;
  try {
    written = parseUnit(tidied);
  } catch {
    throw whyUnreadable(request);
  }
  // mathjs leaves the value null where its types promise a number: a unit without a number
  if (typeof written.value !== 'number' || !Number.isFinite(written.value)) throw whyUnreadable(request);
  if (!isOfDimension(written, dimension)) throw whyWrongKind(request, dimensionOf(written));
  return written;
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
