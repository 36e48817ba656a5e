import type { Unit } from 'mathjs';
import { type Dimension, dimensionOf, isOfDimension, type SiUnit } from './dimension.ts';
import { whyUnreadable, whyWrongKind } from './explain.ts';
import { type Quantity, si } from './quantity.ts';
import type { Examples } from './suggestion.ts';
import { writtenQuantity } from './written-quantity.ts';

/** Beyond this it is not a quantity that a person typed. */
const LONGEST_TEXT = 80;

/**
 * A quantity as an archer writes it, in SI: `28.5 in`, `452gr`, `59 °F`, `50 %`. A ratio may be a bare number.
 *
 * The `+ 0` makes a zero of a negative zero.
 *
 * @param examples two units to show in what to write instead; the dimension's own two by default
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
  const written = writtenQuantity(text, dimension);
  if (written === undefined) throw whyUnreadable(request);
  if (!isOfDimension(written, dimension)) throw whyWrongKind(request, dimensionOf(written));
  return written;
}
