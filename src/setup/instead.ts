import { type DisplayUnit, toSi } from '../quantities/format.ts';
import { parseQuantity } from '../quantities/parse.ts';
import { QuantityError, type QuantityErrorCode } from '../quantities/quantity-error.ts';
import { dimensionIn, isWithin, type Limit, otherUnit } from './limit.ts';
import { exampleOf, isMetric, withUnit } from './refusal.ts';

/** What to write in place of a number outside its limits: with the unit that would bring it inside, or else the example. */
export function insteadOfNonsense(limit: Limit, text: string): string {
  const number = Number.parseFloat(text);
  const [unit] = unitsThatFit(limit, number);
  if (unit !== undefined) return `"${withUnit(number, unit)}"`;
  return `one within the limits, such as "${exampleOf(limit, isMetric(text))}"`;
}

/** Texts without any number in them: what they meant cannot be guessed. */
const WITHOUT_NUMBER: readonly QuantityErrorCode[] = ['empty', 'no-number', 'not-finite'];

/** What to write in place of a text that is no quantity: what the text suggests, when that is within the limits. */
export function insteadOfUnreadable(limit: Limit, text: string, { code, suggestion }: QuantityError): string {
  if (WITHOUT_NUMBER.includes(code)) return `"${exampleOf(limit, isMetric(text))}"`;
  const number = Number.parseFloat(text);
  const fitting = unitsThatFit(limit, number);
  if (code === 'no-unit' && fitting.length === 2)
    return fitting.map((unit) => `"${withUnit(number, unit)}"`).join(' or ');
  const [unit] = fitting;
  if (unit === undefined || wouldDo(limit, /"([^"]*)"/.exec(suggestion)?.[1] ?? '')) return suggestion;
  return `"${withUnit(number, unit)}"`;
}

/** Of the limit's unit and that of the other system, those in which the number would be within the limits. */
const unitsThatFit = (limit: Limit, number: number): readonly DisplayUnit[] =>
  [...new Set<DisplayUnit>([limit.unit, otherUnit(limit.unit)])].filter((unit) =>
    isWithin(limit, toSi(number, unit)),
  );

function wouldDo(limit: Limit, text: string): boolean {
  try {
    return isWithin(limit, parseQuantity(text, dimensionIn(limit.unit)));
  } catch (error) {
    if (error instanceof QuantityError) return false;
    throw error;
  }
}
