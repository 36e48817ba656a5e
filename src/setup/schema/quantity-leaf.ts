import { toSi } from '../../quantities/format.ts';
import { parseDifference, parseQuantity } from '../../quantities/parse.ts';
import { si } from '../../quantities/quantity.ts';
import { QuantityError } from '../../quantities/quantity-error.ts';
import { insteadOfDirection } from './directions.ts';
import { insteadOfNonsense, insteadOfPart, insteadOfUnreadable } from './instead.ts';
import { KEY_MEANINGS, type KeyMeaning } from './key-meaning.ts';
import { type LeafOutcome, leaf, wordMeant } from './leaf.ts';
import { dimensionIn, isWithin, type Limit, otherUnit } from './limit.ts';
import { LIMITS, type LimitKey, type QuantityAt } from './limits.ts';
import { allowedBy, exampleOf, nameOf, type Refusal, withUnit } from './refusal.ts';

/** One key's quantity out of its text, within its limits. */
export function readQuantity<K extends LimitKey>(key: K, text: string): LeafOutcome<QuantityAt<K>> {
  const limit: Limit = LIMITS[key];
  const refuse = (reason: string, write: string) => ({
    refusal: { reason, allowed: allowedBy(limit, text), write },
  });
  return orRefusal(
    refuse,
    (error) => {
      const meant = insteadOfDirection(key, text);
      return meant === undefined ? insteadOfUnreadable(limit, text, error) : `"${meant}"`;
    },
    () => {
      const value = parseQuantity(text, dimensionIn(limit.unit), [limit.unit, otherUnit(limit.unit)]);
      if (limit.whole && !Number.isInteger(value))
        return refuse(`"${text}" is not a whole number`, insteadOfPart(limit, value));
      if (isWithin(limit, value)) return { value: si(value) };
      const side = value > toSi(limit.min, limit.unit) ? 'above' : 'below';
      return refuse(`"${text}" is ${side} the limit. ${limit.why}`, insteadOfNonsense(key, text));
    },
  );
}

/** One key's standard uncertainty out of its text: greater than zero, and no wider than the limits of the key itself. */
function readUncertainty<K extends LimitKey>(key: K, text: string): LeafOutcome<QuantityAt<K>> {
  const limit: Limit = LIMITS[key];
  const allowed = `${nameOf(limit)} greater than 0`;
  const refuse = (reason: string, write: string): { refusal: Refusal } => ({
    refusal: { reason, allowed, write },
  });
  return orRefusal(
    refuse,
    ({ suggestion }) => suggestion,
    () => {
      const value = parseDifference(text, dimensionIn(limit.unit), [limit.unit, otherUnit(limit.unit)]);
      if (!(value > 0))
        return refuse(
          `"${text}" is not greater than 0, but nothing is measured without error`,
          `a small one, such as "${uncertaintyExample(limit)}"`,
        );
      if (value > toSi(limit.max, limit.unit) - toSi(limit.min, limit.unit))
        return refuse(
          `"${text}" is wider than the whole range allowed for the value itself`,
          'a smaller one, or leave it out',
        );
      return { value: si(value) };
    },
  );
}

/** A quantity for which a word may stand: a text that is nearly the word is answered with it. */
export function orWord<T>(word: string, outcome: LeafOutcome<T>, text: string): LeafOutcome<T> {
  if (outcome.refusal === undefined || wordMeant(text, [word]) === undefined) return outcome;
  return { refusal: { ...outcome.refusal, write: `"${word}"` } };
}

/** A thousandth of the span of the limits: small, whatever it is. */
const uncertaintyExample = ({ min, max, unit }: Limit): string =>
  withUnit(Number((0.001 * (max - min)).toPrecision(1)), unit);

function orRefusal<T>(
  refuse: (reason: string, write: string) => { refusal: Refusal },
  instead: (error: QuantityError) => string,
  read: () => LeafOutcome<T>,
): LeafOutcome<T> {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    return refuse(error.reason, instead(error));
  }
}

/** What the number at a key path is, with its limits. */
export function meaningAt(key: LimitKey): KeyMeaning {
  const limit: Limit = LIMITS[key];
  const { what, otherwise } = limit;
  return otherwise === undefined ? { what, limit } : { what, otherwise, limit };
}

/** The schema of the quantity that belongs at a key path. */
export const quantityAt = <K extends LimitKey>(key: K) =>
  leaf(
    () => ({ allowed: allowedBy(LIMITS[key], ''), write: `"${exampleOf(LIMITS[key], false)}"` }),
    (text): LeafOutcome<QuantityAt<K>> => readQuantity(key, text),
  ).register(KEY_MEANINGS, meaningAt(key));

/** The schema of the standard uncertainty of the quantity at a key path. */
export const uncertaintyAt = <K extends LimitKey>(key: K) =>
  leaf(
    () => ({
      allowed: `${nameOf(LIMITS[key])} greater than 0`,
      write: 'how well the value is known, or leave the key out',
    }),
    (text): LeafOutcome<QuantityAt<K>> => readUncertainty(key, text),
  );
