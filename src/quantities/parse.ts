import type { Dimension, SiUnit } from './dimension.ts';
import { dimensionOf } from './dimension-of.ts';
import { whyUnreadable, whyWrongKind } from './explain.ts';
import { type Quantity, si } from './quantity.ts';
import { type Reading, readingsOf } from './readings.ts';
import type { Examples } from './suggestion.ts';
import { writtenQuantity } from './written-quantity.ts';

/** Beyond this it is not a quantity that a person typed. */
export const LONGEST_TEXT = 80;

/**
 * A quantity as an archer writes it, in SI: `28.5 in`, `28 1/2"`, `452gr`, `59 °F`, `50 %`. A ratio may be a bare number, and
 * `1,250 ft` is a thousand and more.
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
  return si(read(text, dimension, examples).value);
}

/** The same for a difference or a standard uncertainty: 9 degF of difference is 5 K. */
export function parseDifference<D extends Dimension>(
  text: string,
  dimension: D,
  examples?: Examples,
): Quantity<SiUnit[D]> {
  return si(read(text, dimension, examples).difference);
}

/** The likeliest of what the text may mean. */
function read(text: string, dimension: Dimension, examples: Examples | undefined): Reading {
  const request = { text, dimension, examples };
  if (text.length > LONGEST_TEXT) throw whyUnreadable(request);
  const [likeliest] = readingsOf(text, dimension);
  if (likeliest !== undefined) return likeliest;
  const written = writtenQuantity(text, dimension);
  if (written === undefined) throw whyUnreadable(request);
  throw whyWrongKind(request, dimensionOf(written));
}
