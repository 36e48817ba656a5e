import { type DisplayUnit, toSi } from '../../quantities/format.ts';
import { parseQuantity } from '../../quantities/parse.ts';
import { QuantityError, type QuantityErrorCode } from '../../quantities/quantity-error.ts';
import { spokenNumber } from '../../quantities/spoken-number.ts';
import { inBothUnits } from '../../quantities/suggestion.ts';
import { dimensionIn, isWithin, type Limit, otherUnit } from './limit.ts';
import { LIMITS, type LimitKey } from './limits.ts';
import { exampleOf, isMetric, withUnit } from './refusal.ts';

/** Keys whose values are taken for one another: a number that fits the other key is not a wrong unit. */
const TAKEN_FOR: Partial<Record<LimitKey, LimitKey>> = {
  'bow.peep_height': 'sight.peep_to_pin',
  'sight.peep_to_pin': 'bow.peep_height',
};

/** The limits of the key that this one is taken for, if there is one. */
export function takenFor(key: LimitKey): Limit | undefined {
  const other = TAKEN_FOR[key];
  return other === undefined ? undefined : LIMITS[other];
}

/** What to write in place of a number outside its limits: with the unit that would bring it inside, or else the example. */
export function insteadOfNonsense(key: LimitKey, text: string): string {
  const limit: Limit = LIMITS[key];
  const other = takenFor(key);
  const number = numberIn(text);
  const [unit] = other !== undefined && wouldDo(other, text) ? [] : unitsThatFit(limit, number);
  return unit === undefined ? anExample(limit, text) : `"${withUnit(number, unit)}"`;
}

/** Not a number when the text begins with none. */
const numberIn = (text: string): number => Number(spokenNumber(text)?.values[0]);

/** What to write in place of a part where only whole numbers belong. */
export const insteadOfPart = (limit: Limit, value: number): string =>
  isWithin(limit, Math.round(value)) ? `"${Math.round(value)}"` : anExample(limit, '');

const anExample = (limit: Limit, text: string): string =>
  `a value within the limits, such as "${exampleOf(limit, isMetric(text))}"`;

/** Texts without any number in them: what they meant cannot be guessed. */
const WITHOUT_NUMBER: readonly QuantityErrorCode[] = ['empty', 'no-number', 'not-finite'];

/** What to write in place of a text that is not a quantity: what the text suggests, when that is within the limits. */
export function insteadOfUnreadable(limit: Limit, text: string, { code, suggestion }: QuantityError): string {
  if (WITHOUT_NUMBER.includes(code)) {
    const rest = text
      .trim()
      .replace(/^(?:about|around|approx(?:imately)?\.?|ca?\.?|roughly|nearly|~)\s*/i, '');
    return rest !== text.trim() && wouldDo(limit, rest) ? `"${rest}"` : anExample(limit, text);
  }
  return withinLimits(limit, suggestion) ?? withUnits(limit, text, numberIn(text));
}

/** A suggestion without those of its texts that are outside the limits; undefined when none is left. */
function withinLimits(limit: Limit, suggestion: string): string | undefined {
  const offered = [...suggestion.matchAll(/"([^"]*)"/g)].map(([, each = '']) => each);
  const good = offered.filter((each) => wouldDo(limit, each));
  if (good.length === 0) return undefined;
  return good.length === offered.length ? suggestion : good.map((each) => `"${each}"`).join(' or ');
}

/** The number with the unit that brings it inside the limits, and the same in the unit of the other system. */
function withUnits(limit: Limit, text: string, number: number): string {
  const [unit] = unitsThatFit(limit, number);
  if (unit === undefined) return anExample(limit, text);
  const other = unit === limit.unit ? otherUnit(limit.unit) : limit.unit;
  const one = `"${withUnit(number, unit)}"`;
  // the rounding of the second can carry it over a limit
  return limit.unit === '%' ? one : (withinLimits(limit, inBothUnits(number, [unit, other])) ?? one);
}

/** Of the limit's unit and that of the other system, those in which the number would be within the limits. */
const unitsThatFit = (limit: Limit, number: number): readonly DisplayUnit[] =>
  [...new Set<DisplayUnit>([limit.unit, otherUnit(limit.unit)])].filter((unit) =>
    isWithin(limit, toSi(number, unit)),
  );

/** Whether a text is a quantity within the limits. */
function wouldDo(limit: Limit, text: string): boolean {
  try {
    return isWithin(limit, parseQuantity(text, dimensionIn(limit.unit)));
  } catch (error) {
    if (error instanceof QuantityError) return false;
    throw error;
  }
}
