import { NUMBER } from './leading-number.ts';

/** A number as archers write it, and what stands after it. */
export interface SpokenNumber {
  /** As decimals; two where a comma may be either kind, the one with thousands first. */
  readonly values: readonly string[];
  readonly rest: string;
  /** Whether the decimal is not the one that was typed. */
  readonly workedOut: boolean;
}

/** One half, three quarters and their like as one character. */
const VULGAR_FRACTION = /[\u00bc-\u00be\u2150-\u215e]/g;

/** Digits and letters as wide as Chinese ones, and degrees in one character with their scale. */
const WIDE = /[\u2103\u2109\uff01-\uff5e]/g;
/** Dashes that word processors and telephones put for a minus sign, before a number. */
const LONG_MINUS = /^[\u2010-\u2014\u2212]\s*(?=[\d.,])/;
/** Quotation marks around all of it, as word processors and pages bend them. */
const QUOTED = /^["'\u2018\u201c\u201e\u00ab](?<inside>[^a-z]*\d.*)["'\u2019\u201c\u201d\u00bb]$/i;

/** A text with its vulgar fractions spelled out, 28 1/2, its minus sign as on a keyboard, and no quotation marks around it. */
export const spelledOut = (text: string): string =>
  text
    .trim()
    .replace(QUOTED, '$<inside>')
    .trim()
    .replace(WIDE, (sign) => sign.normalize('NFKC'))
    .replace(LONG_MINUS, '-')
    .replace(VULGAR_FRACTION, (sign) => ` ${sign.normalize('NFKD')}`)
    .replaceAll('\u2044', '/')
    .replace(/([+-])\s+(?=\d+\/)/, '$1')
    .trim();

const FRACTION =
  /^(?<sign>[+-]?)(?:(?<whole>\d+)(?:\s*-\s*|\s+))?(?<above>\d+)\s*\/\s*(?<below>0*[1-9]\d*)(?!\d)/;
const FEET = String.raw`(?:['\u2032\u2019]|ft\b|feet\b|foot\b)\.?`;
const INCHES = String.raw`(?:["\u2033\u201d]|''|\u2019\u2019|(?:inches|inch|ins|in)\b)\.?`;
/** The inches may be a decimal or a fraction: 5' 3 1/2". */
const FEET_AND_INCHES = new RegExp(
  String.raw`^(?<sign>[+-]?)(?<feet>\d+)\s*${FEET}\s*(?:and\s+|-\s*)?(?<inches>\d[\d./\s-]*?)\s*${INCHES}$`,
  'i',
);
const COMMA_GROUPS = /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?(?![\d,.])/;
const DECIMAL_COMMA = /^(?<sign>[+-]?)(?<whole>\d*),(?<digits>\d+)(?![\d,.])/;
/** 1.250,5: the point is between the thousands when a comma follows. */
const POINT_GROUPS = /^([+-]?\d{1,3}(?:\.\d{3})+),(\d+)(?![\d,.])/;
/** 12 500 ft: a blank between groups of three. */
const BLANK_GROUPS = /^[+-]?\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?![\d,.])/;
const PLAIN = new RegExp(`^${NUMBER}`);
const WORDS = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const IN_WORDS = new RegExp(`^(?:${WORDS.join('|')})\\b`, 'i');

/** The number that a text begins with; undefined when it begins with none. */
export function spokenNumber(typed: string): SpokenNumber | undefined {
  const text = spelledOut(typed).replaceAll('\u2212', '-');
  const after = (length: number): string => text.slice(length).trim();
  const feet = feetAndInches(text);
  if (feet !== undefined) return { values: [feet], rest: 'in', workedOut: true };
  const fraction = fractionAt(text);
  if (fraction !== undefined)
    return { values: [fraction.value], rest: after(fraction.length), workedOut: true };
  const commas = commaAt(text);
  if (commas !== undefined) return { values: commas.values, rest: after(commas.length), workedOut: true };
  const [blanks] = BLANK_GROUPS.exec(text) ?? [];
  if (blanks !== undefined)
    return { values: [blanks.replace(/\s/g, '')], rest: after(blanks.length), workedOut: true };
  const [plain] = PLAIN.exec(text) ?? [];
  if (plain !== undefined) return { values: [plain], rest: after(plain.length), workedOut: false };
  const [word] = IN_WORDS.exec(text) ?? [];
  if (word === undefined) return undefined;
  return {
    values: [String(WORDS.indexOf(word.toLowerCase()) + 1)],
    rest: after(word.length),
    workedOut: true,
  };
}

/** 2 ft 9 in, 5' 3 1/2": in inches. */
function feetAndInches(text: string): string | undefined {
  const { sign = '', feet, inches } = FEET_AND_INCHES.exec(text)?.groups ?? {};
  if (feet === undefined || inches === undefined) return undefined;
  const fraction = fractionAt(inches);
  const whole = fraction?.length === inches.length ? Number(fraction.value) : Number(inches);
  return Number.isFinite(whole) ? `${sign}${12 * Number(feet) + whole}` : undefined;
}

/** 28 1/2, 28-1/2, 3/4: with a whole number before it the fraction must be less than one, or it is something else. */
function fractionAt(text: string): { readonly value: string; readonly length: number } | undefined {
  const match = FRACTION.exec(text);
  const { sign = '', whole, above = '', below = '' } = match?.groups ?? {};
  if (match === null || (whole !== undefined && Number(above) >= Number(below))) return undefined;
  const part = Number(above) / Number(below);
  const value = whole === undefined ? part : Number(whole) + part;
  return { value: `${sign}${value}`, length: match[0].length };
}

/** 6,5 can only be a decimal, as can 0,465; 12,345,000 only thousands; 1,250 may be either. */
function commaAt(text: string): { readonly values: readonly string[]; readonly length: number } | undefined {
  const [points, thousands, decimals] = POINT_GROUPS.exec(text) ?? [];
  if (points !== undefined && thousands !== undefined)
    return { values: [`${thousands.replaceAll('.', '')}.${decimals}`], length: points.length };
  const [groups] = COMMA_GROUPS.exec(text) ?? [];
  const match = DECIMAL_COMMA.exec(text);
  const { sign = '', whole = '', digits = '' } = match?.groups ?? {};
  const decimal = match === null ? [] : [`${sign}${whole === '' ? '0' : whole}.${digits}`];
  const length = groups?.length ?? match?.[0].length;
  if (length === undefined) return undefined;
  const grouped = groups === undefined || /^0+$/.test(whole) ? [] : [groups.replaceAll(',', '')];
  return { values: [...grouped, ...decimal], length };
}
