import type { UnitSystem } from '../../quantities/display-units.ts';
import { nearestWord } from '../../quantities/nearest-word.ts';
import { withBareUnits } from './bare.ts';
import { chosen } from './chosen.ts';
import type { Asked, CountOption, NamedText, Option, Options, SubjectOption } from './option.ts';
import { optionQuantity } from './quantity.ts';
import type { Question } from './question.ts';
import { QuestionError } from './question-error.ts';

/** What was asked, as far as it was; the question's defaults stand for the rest. */
export type Given<O extends Options> = { readonly [Name in keyof O]?: unknown };

/** A whole number within the limits of its option. @throws QuestionError */
export function countFrom(name: string, given: unknown, { least, most }: CountOption): number {
  const value = typeof given === 'string' && given.trim() === '' ? Number.NaN : Number(given);
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw new QuestionError(
    `{${name}}: ${given} cannot be used`,
    `Write a whole number from ${least} to ${most}.`,
  );
}

function valueGiven(
  name: string,
  option: Option,
  given: unknown,
  system: UnitSystem,
  metres: boolean,
): unknown {
  if (given === undefined || given === null) return defaultOf(name, option, metres);
  if (option.kind === 'count') return countFrom(name, given, option);
  if (option.kind === 'flag') return given === true;
  if (option.kind === 'list' || option.kind === 'optional list')
    return Array.isArray(given) ? given.map(String) : [String(given)];
  if (option.kind === 'subject') return subjectGiven(String(given), option);
  if (option.kind === 'text file') return isNamedText(given) ? given : { name, text: String(given) };
  if (option.kind !== 'choice') return withBareUnits(option, String(given), system, metres);
  const choice = chosen(option.choices, String(given));
  if (choice !== undefined) return choice;
  throw new QuestionError(
    `{${name}}: ${given} is not one of its values`,
    `Write ${option.choices.join(' or ')}.`,
  );
}

/** The word that was meant; what is no such word is refused with the nearest. */
function subjectGiven(given: string, { of, choices }: SubjectOption<string>): string {
  const found = chosen(choices, given);
  if (found !== undefined) return found;
  const meant = nearestWord(given, choices);
  throw new QuestionError(
    `"${given}" is not a ${of} that is known here`,
    meant === undefined ? `Write ${choices.join(', ')}.` : `Write "${meant}".`,
  );
}

/** What a door has read is a text with its name; a script may give the text alone. */
const isNamedText = (given: unknown): given is NamedText =>
  typeof given === 'object' &&
  given !== null &&
  'name' in given &&
  typeof given.name === 'string' &&
  'text' in given &&
  typeof given.text === 'string';

function defaultOf(name: string, option: Option, metres: boolean): unknown {
  switch (option.kind) {
    case 'range':
      return `${option.yards} ${metres ? 'm' : 'yd'}`;
    case 'optional text':
    case 'subject':
    case 'text file':
      return null;
    case 'flag':
      return false;
    case 'optional list':
      return [];
    case 'list':
      throw new QuestionError(`{${name}} is missing`, `Write {${name}} <${option.of}>.`);
    default:
      return option.value;
  }
}

/**
 * Every option of a question with its value: what was given, checked as far as its kind goes, or its default.
 *
 * @throws QuestionError for an option that the question does not have, a count or a choice outside its limits, a missing list
 */
export function filled<O extends Options>(asked: Question<O>, given: Given<O>, system: UnitSystem): Asked<O> {
  const unknown = Object.keys(given).find((name) => !Object.hasOwn(asked.options, name));
  if (unknown !== undefined)
    throw new QuestionError(
      `${asked.name} has no option {${unknown}}`,
      `It has ${Object.keys(asked.options)
        .map((name) => `{${name}}`)
        .join(', ')}.`,
    );
  const metric = asked.countsMetres?.(given, system) ?? system !== 'imperial';
  const value = (name: string, option: Option): unknown =>
    valueGiven(name, option, given[name], system, metric);
  const { from, every } = asked.options;
  const first =
    from !== undefined && every !== undefined && given['from'] === undefined && given['every'] !== undefined
      ? alignedFrom(String(value('from', from)), String(value('every', every)))
      : null;
  const entries = Object.entries(asked.options).map(([name, option]) => [
    name,
    name === 'from' && first !== null ? first : value(name, option),
  ]);
  // Each value is of the kind that its option names; the compiler cannot follow entries.
  return Object.fromEntries(entries) as Asked<O>;
}

/** Where rows begin that nobody named: at the first multiple of the step that was written. */
function alignedFrom(from: string, every: string): string {
  const [usual, step] = [optionQuantity('from', from, 'length'), optionQuantity('every', every, 'length')];
  const count = Math.ceil(usual / step - ROUNDING_LEFT);
  return step > 0 && count * step > usual ? `${Number((count * step).toFixed(10))} m` : from;
}
/** Of a step. */
const ROUNDING_LEFT = 1e-6;
