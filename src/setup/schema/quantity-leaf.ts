import { at } from '../../numerics/at.ts';
import { toSi } from '../../quantities/format.ts';
import { LONGEST_TEXT, parseDifference, parseQuantity } from '../../quantities/parse.ts';
import { si } from '../../quantities/quantity.ts';
import { QuantityError } from '../../quantities/quantity-error.ts';
import { type Reading, readingsOf } from '../../quantities/readings.ts';
import { spokenNumber } from '../../quantities/spoken-number.ts';
import { bareQuantity } from './bare-number.ts';
import { bearing, directed, underOtherWay } from './directions.ts';
import { insteadOfNonsense, insteadOfPart, insteadOfUnreadable, takenFor } from './instead.ts';
import { KEY_MEANINGS, type KeyMeaning } from './key-meaning.ts';
import { type LeafOutcome, leaf, wordMeant } from './leaf.ts';
import { dimensionIn, isWithin, type Limit, otherUnit } from './limit.ts';
import { LIMITS, type LimitKey, type QuantityAt } from './limits.ts';
import { allowedBy, exampleOf, nameOf, type Refusal, withUnit } from './refusal.ts';

/** One key's quantity out of its text, within its limits, with what it was taken for where that is not what was typed. */
export function readQuantity<K extends LimitKey>(key: K, text: string): LeafOutcome<QuantityAt<K>> {
  const limit: Limit = LIMITS[key];
  const refuse = (reason: string, write: string) => ({
    refusal: { reason, allowed: allowedBy(limit, text), write },
  });
  const inWords = directed(key, text);
  const sign = inWords === undefined ? 1 : inWords.sign;
  const heading = bearing(key, text);
  const typed = inWords?.text ?? heading ?? text;
  const dimension = dimensionIn(limit.unit);
  const number = spokenNumber(typed);
  if (inWords?.signedTwice === true) {
    const size = typed.replace(/^[+-]\s*/, '');
    return refuse(`"${text}" has both a sign and a word for it`, `"-${size}" or "${size}"`);
  }
  const otherWay = underOtherWay(key, text);
  if (otherWay !== undefined) return refuse(`"${text}" is not ${wayOf(key)}`, otherWay);
  if (number?.rest === '' && dimension !== 'ratio' && limit.unitNeeded !== true)
    return bareQuantity(
      limit,
      text,
      number.values.map((value) => sign * Number(value)),
      takenFor(key),
    );
  return orRefusal(
    refuse,
    (error) => insteadOfUnreadable(limit, typed, error),
    () => {
      const meant = meanings(limit, typed).map((each) => ({ ...each, value: sign * each.value + 0 }));
      const inside = meant.filter(({ value }) => isWithin(limit, value));
      const [found] = inside;
      const { value } = found ?? at(meant, 0);
      if (limit.whole && !Number.isInteger(value))
        return refuse(`"${text}" is not a whole number`, insteadOfPart(limit, value));
      if (found === undefined) {
        const side = value > toSi(limit.min, limit.unit) ? 'above' : 'below';
        return refuse(`"${text}" is ${side} the limit. ${limit.why}`, insteadOfNonsense(key, typed));
      }
      if (number?.rest === '' && number.values.length > 1 && inside.length > 1)
        return refuse(`"${text}" may be two numbers`, inside.map((each) => `"${each.text}"`).join(' or '));
      const either = key.endsWith('altitude') ? pointOrGroup(typed) : undefined;
      if (either !== undefined) return refuse(`"${text}" may be two numbers`, either);
      const said = sign < 0 ? `-${found.text}` : found.text;
      return found.workedOut || typed !== text ? { value: si(value), readAs: said } : { value: si(value) };
    },
  );
}

/** 7.000 ft: seven thousand feet, where a point stands between thousands, or an altitude to a thousandth of a foot. */
const POINT_GROUP = /^(?<before>[1-9]\d{0,2})\.(?<after>\d{3})(?=\D|$)/;

/** Both altitudes that a text may mean, to be chosen from; undefined where there is one. */
function pointOrGroup(text: string): string | undefined {
  const { before, after } = POINT_GROUP.exec(text)?.groups ?? {};
  if (before === undefined || after === undefined) return undefined;
  const rest = text.slice(before.length + 1 + after.length);
  return `"${before}${after}${rest}" or "${Number(`${before}.${after}`).toFixed(1)}${rest}"`;
}

const wayOf = (key: LimitKey): string => (key === 'marks.lateral' ? 'left or right' : 'high or low');

/**
 * What a text may mean, the likelier first; 45 is also 45 % where a percentage belongs.
 *
 * @throws QuantityError when it means nothing
 */
function meanings(limit: Limit, text: string): readonly Reading[] {
  const dimension = dimensionIn(limit.unit);
  const readings = text.length > LONGEST_TEXT ? [] : readingsOf(text, dimension);
  if (readings.length === 0) {
    // The reader of quantities says why.
    const value = parseQuantity(text, dimension, [limit.unit, otherUnit(limit.unit)]);
    return [{ value, difference: value, text, workedOut: false }];
  }
  const number = limit.unit === '%' ? spokenNumber(text) : undefined;
  const percent = number?.rest === '' ? readingsOf(`${number.values[0]} %`, dimension) : [];
  return [...readings, ...percent.map((each) => ({ ...each, workedOut: true }))];
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
