import { DIMENSIONS, type Dimension, dimensionOf } from './dimension.ts';
import { nearestWord } from './nearest-word.ts';
import { QuantityError, type QuantityErrorCode } from './quantity-error.ts';
import { inBothUnits, quoted, type Request, SPELLINGS, trimmed } from './suggestion.ts';
import { parseUnit } from './units.ts';
import { isQuantity } from './written-quantity.ts';

const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;
const QUOTES: Readonly<Record<string, string>> = {
  '"': 'in',
  '\u2033': 'in',
  '\u201d': 'in',
  "''": 'in',
  "'": 'ft',
  '\u2032': 'ft',
  '\u2019': 'ft',
};

/** One half, three quarters and their like as one character. */
const VULGAR_FRACTION = /[\u00bc-\u00be\u2150-\u215e]/g;

/** 5' 3", 2 ft 9 in */
const FEET_AND_INCHES =
  /^(\d+)\s*(?:['\u2032\u2019]|ft|feet|foot)\s*(?:and\s+)?(\d+\.?\d*)\s*(?:["\u2033\u201d]|''|in|inch|inches)\.?$/i;

const inInches = ([, feet, inches]: RegExpExecArray): string =>
  `"${trimmed(12 * Number(feet) + Number(inches))} in"`;

/** Why mathjs could not read a finite number with a unit in the text. */
export function whyUnreadable(request: Request): QuantityError {
  const text = request.text
    .trim()
    .replace(VULGAR_FRACTION, (sign) => ` ${sign.normalize('NFKD').replace('\u2044', '/')}`);
  const say = (code: QuantityErrorCode, reason: string, suggestion?: string) =>
    explain(request, code, reason, suggestion);
  const match = (pattern: string) => new RegExp(`^${pattern}$`).exec(text);

  if (text === '') return say('empty', 'nothing is written where a quantity belongs');
  if (text.length > 80) return say('unreadable', `"${text.slice(0, 40)}..." is too long to be a quantity`);

  const mixed = match(String.raw`([+-]?)(?:(\d+)[ -])?\s*(\d+)\s*/\s*(\d+)\s*([a-zA-Z"'\u00b0%].*)?`);
  if (mixed !== null && Number(mixed[4]) > 0) {
    const [, sign = '', whole = '0', above = '', below = '', unit = ''] = mixed;
    const decimal = trimmed(Number(whole) + Number(above) / Number(below));
    return say(
      'fraction',
      `"${text}" is a fraction`,
      quoted(`${sign}${decimal}`, QUOTES[unit] ?? unit.replace('\u00b0', 'deg'), request),
    );
  }
  const feetAndInches = FEET_AND_INCHES.exec(text);
  if (feetAndInches !== null)
    return say(
      'quote-mark',
      /[a-z]/i.test(text) ? `"${text}" is feet and inches` : `"${text}" has marks for units`,
      inInches(feetAndInches),
    );
  const spaced = match(String.raw`([+-]?\d+(?:_\d+)+(?:\.\d+)?)\s*(\D.*)?`);
  if (spaced !== null)
    return say(
      'unreadable',
      `"${text}" has a dash between its digits`,
      quoted((spaced[1] ?? '').replaceAll('_', ''), spaced[2] ?? '', request),
    );
  const quote = match(String.raw`(${NUMBER})\s*(["\u2033\u201d'\u2032\u2019]|'')`);
  if (quote !== null)
    return say(
      'quote-mark',
      `"${text}" has a mark for a unit`,
      `"${quote[1]} ${QUOTES[quote[2] ?? ''] ?? 'in'}"`,
    );

  const comma = match(String.raw`([+-]?\d*),(\d+)\s*(\D.*)?`);
  if (comma !== null) {
    const [, whole = '', digits = '', unit = ''] = comma;
    const decimal = quoted(`${whole || '0'}.${digits}`, unit, request);
    const thousands = digits.length === 3 ? ` or ${quoted(`${whole}${digits}`, unit, request)}` : '';
    return say('decimal-comma', `"${text}" has a comma`, `${decimal}${thousands}`);
  }
  const tolerance = match(String.raw`(${NUMBER})\s*([a-zA-Z%/ ]*?)\s*(?:\u00b1|\+\/?-)\s*(${NUMBER})\s*(.*)`);
  if (tolerance !== null) {
    const value = quoted(tolerance[1] ?? '', tolerance[2] || tolerance[4] || '', request);
    return say(
      'unreadable',
      `"${text}" is two numbers`,
      `${value}, and the uncertainty under the key that ends in _sd`,
    );
  }
  const span = match(
    String.raw`(\d+\.?\d*)\s*([a-zA-Z%/\u00b0]*)\s*(?:-|\u2013|\u2014|\.\.+|to)\s*(\d+\.?\d*)\s*([a-zA-Z%/\u00b0]*)`,
  );
  if (span !== null) {
    const mean = trimmed((Number(span[1]) + Number(span[3])) / 2);
    return say(
      'unreadable',
      `"${text}" is two numbers`,
      `${quoted(mean, span[4] || span[2] || '', request)}, the mean of the two`,
    );
  }
  const number = new RegExp(`^${NUMBER}`).exec(text);
  if (number === null) {
    const what = /^[+-]?(nan|\.?inf(inity)?)\b/i.test(text)
      ? 'is not a finite number'
      : 'does not begin with a number';
    const code = /finite/.test(what) ? 'not-finite' : 'no-number';
    return say(code, `"${text}" ${what}`);
  }
  const unit = text.slice(number[0].length).trim();
  if (!Number.isFinite(Number(number[0]))) return say('not-finite', `"${text}" is not a finite number`);
  if (unit === '') return say('no-unit', `"${text}" has no unit`);
  return whyNoSuchUnit(request, number[0], unit);
}

function whyNoSuchUnit(request: Request, number: string, unit: string): QuantityError {
  const { dimension } = request;
  const bare = unit.replace(/\.$/, '');
  const pounds = /^(#|pounds?)$/i.test(bare) ? (dimension === 'force' ? 'lbf' : 'lb') : undefined;
  if (readable(unit))
    return explain(request, 'not-finite', `"${request.text.trim()}" is not a finite quantity`);
  const meant = pounds ?? (readable(bare) ? bare : nearestWord(bare, SPELLINGS[dimension]));
  const reason = `"${request.text.trim()}" has a unit that quillpath does not know: "${unit}"`;
  return explain(request, 'unknown-unit', reason, meant === undefined ? undefined : `"${number} ${meant}"`);
}

/** Why a quantity of one kind will not do for another, with the unit that was likely meant. */
export function whyWrongKind(request: Request, found: Dimension | undefined): QuantityError {
  const { dimension, text } = request;
  const feetAndInches = FEET_AND_INCHES.exec(text.trim());
  if (feetAndInches !== null)
    return explain(request, 'unreadable', `"${text.trim()}" is feet and inches`, inInches(feetAndInches));
  const what = found === undefined ? 'another kind of quantity' : DIMENSIONS[found].name;
  const number = new RegExp(`^${NUMBER}`).exec(text.trim())?.[0] ?? '';
  const unit = text.trim().slice(number.length).trim();
  const meant = found === undefined ? undefined : likelyMeant(unit, found, dimension);
  return explain(
    request,
    'wrong-dimension',
    `"${text.trim()}" is ${what}, not ${DIMENSIONS[dimension].name}`,
    meant === undefined ? undefined : `"${number} ${meant}"`,
  );
}

/** Slips between kinds that archers make: pounds of pull and of mass, feet for feet a second, grains for grains an inch. */
function likelyMeant(unit: string, found: Dimension, wanted: Dimension): string | undefined {
  if (found === 'mass' && wanted === 'force') return /^k/.test(unit) ? 'kgf' : 'lbf';
  if (found === 'force' && wanted === 'mass') return /^k/.test(unit) ? 'kg' : 'lb';
  if (found === 'length' && wanted === 'speed') return /^m/.test(unit) ? 'm/s' : 'fps';
  if (found === 'mass' && wanted === 'massPerLength') return unit === 'g' ? 'g/m' : 'gpi';
  if (found === 'massPerLength' && wanted === 'mass') return 'gr';
  return undefined;
}

function explain(
  { text, dimension, examples }: Request,
  code: QuantityErrorCode,
  reason: string,
  suggestion?: string,
): QuantityError {
  const number = Number(new RegExp(`^${NUMBER}`).exec(text.trim())?.[0] ?? Number.NaN);
  // a guess at the unit is worth telling only when it is a unit of the kind that belongs here
  const guess = /^"([^"]*)"/.exec(suggestion ?? '')?.[1];
  const told = guess !== undefined && isQuantity(guess, dimension) ? suggestion : undefined;
  return new QuantityError({
    code,
    found: text,
    reason,
    expected: DIMENSIONS[dimension].name,
    suggestion: told ?? inBothUnits(number, examples ?? DIMENSIONS[dimension].examples),
  });
}

function readable(unit: string): boolean {
  try {
    return dimensionOf(parseUnit(unit)) !== undefined;
  } catch {
    return false;
  }
}
