import type { Dimension } from './dimension.ts';
import { dimensionOf } from './dimension-of.ts';
import { NUMBER } from './leading-number.ts';
import { nearestWord } from './nearest-word.ts';
import type { QuantityErrorCode } from './quantity-error.ts';
import { quoted, type Request, SPELLINGS } from './suggestion.ts';
import { trimmed } from './trimmed.ts';
import { parseUnit } from './units.ts';

/** What a named group of a slip's pattern matched; empty when it took no part. */
export type PartOf = (group: string) => string;

/** One way of writing a quantity that cannot be read: how to know it, what to say, what was meant. */
export interface Slip {
  readonly name: string;
  /** Something that an archer may write; the tests try it. */
  readonly example: { readonly text: string; readonly dimension: Dimension };
  /** Matched against the trimmed text, with its vulgar fractions spelled out. */
  readonly pattern: RegExp;
  /** What the pattern cannot say. */
  readonly applies?: (part: PartOf) => boolean;
  readonly code: QuantityErrorCode;
  /** As a clause. */
  readonly reason: (text: string, part: PartOf) => string;
  /** What to write, in quotation marks; without one, examples of the quantity are shown. */
  readonly meant?: (part: PartOf, request: Request) => string | undefined;
}

/** Marks that stand for units, by the units that they stand for. */
const UNIT_OF_MARK: ReadonlyMap<string, string> = new Map([
  ['"', 'in'],
  ['\u2033', 'in'],
  ['\u201d', 'in'],
  ["''", 'in'],
  ["'", 'ft'],
  ['\u2032', 'ft'],
  ['\u2019', 'ft'],
]);
const unitOf = (mark: string): string => UNIT_OF_MARK.get(mark) ?? mark.replace('\u00b0', 'deg');

const LONGEST_TEXT = 80;
const SHOWN_OF_LONG = 40;

const pattern = (source: string, flags = ''): RegExp => new RegExp(`^${source}$`, flags);

/** 5' 3", 2 ft 9 in */
export const FEET_AND_INCHES = pattern(
  String.raw`(?<feet>\d+)\s*(?:['\u2032\u2019]|ft|feet|foot)\s*(?:and\s+)?` +
    String.raw`(?<inches>\d+\.?\d*)\s*(?:["\u2033\u201d]|''|in|inch|inches)\.?`,
  'i',
);

export const inInches = (part: PartOf): string =>
  `"${trimmed(12 * Number(part('feet')) + Number(part('inches')))} in"`;

/**
 * The slips in the order in which they are tried: the first that matches is taken, so that those further down need not say what
 * they are not.
 */
export const SLIPS: readonly Slip[] = [
  {
    name: 'nothing',
    example: { text: ' ', dimension: 'length' },
    pattern: pattern(''),
    code: 'empty',
    reason: () => 'nothing is written where a quantity belongs',
  },
  {
    name: 'a long text',
    example: { text: 'about as far as the second tree '.repeat(3), dimension: 'length' },
    pattern: pattern(String.raw`[\s\S]{${LONGEST_TEXT + 1},}`),
    code: 'unreadable',
    reason: (text) => `"${text.slice(0, SHOWN_OF_LONG)}..." is too long to be a quantity`,
  },
  {
    name: 'a fraction',
    example: { text: '28 1/2', dimension: 'length' },
    pattern: pattern(
      String.raw`(?<sign>[+-]?)(?:(?<whole>\d+)[ -])?\s*(?<above>\d+)\s*/\s*(?<below>0*[1-9]\d*)` +
        String.raw`\s*(?<unit>[a-zA-Z"'\u00b0%].*)?`,
    ),
    code: 'fraction',
    reason: (text) => `"${text}" is a fraction`,
    meant: (part, request) => {
      const decimal = Number(part('whole')) + Number(part('above')) / Number(part('below'));
      return quoted(`${part('sign')}${trimmed(decimal)}`, unitOf(part('unit')), request);
    },
  },
  {
    name: 'feet and inches',
    example: { text: '5\' 3"', dimension: 'speed' },
    pattern: FEET_AND_INCHES,
    code: 'quote-mark',
    reason: (text) =>
      /[a-z]/i.test(text) ? `"${text}" is feet and inches` : `"${text}" has marks for units`,
    meant: inInches,
  },
  {
    name: 'a line between digits',
    example: { text: '1_000 m', dimension: 'length' },
    pattern: pattern(String.raw`(?<number>[+-]?\d+(?:_\d+)+(?:\.\d+)?)\s*(?<unit>\D.*)?`),
    code: 'unreadable',
    reason: (text) => `"${text}" has a dash between its digits`,
    meant: (part, request) => quoted(part('number').replaceAll('_', ''), part('unit'), request),
  },
  {
    name: 'a mark for a unit',
    example: { text: '28.5"', dimension: 'speed' },
    pattern: pattern(String.raw`(?<number>${NUMBER})\s*(?<mark>["\u2033\u201d'\u2032\u2019]|'')`),
    code: 'quote-mark',
    reason: (text) => `"${text}" has a mark for a unit`,
    meant: (part) => `"${part('number')} ${unitOf(part('mark'))}"`,
  },
  {
    name: 'a comma',
    example: { text: '28,5', dimension: 'length' },
    pattern: pattern(String.raw`(?<whole>[+-]?\d*),(?<digits>\d+)\s*(?<unit>\D.*)?`),
    code: 'decimal-comma',
    reason: (text) => `"${text}" has a comma`,
    meant: (part, request) => {
      const [whole, digits, unit] = [part('whole'), part('digits'), part('unit')];
      const decimal = quoted(`${whole === '' ? '0' : whole}.${digits}`, unit, request);
      return digits.length === 3 ? `${quoted(`${whole}${digits}`, unit, request)} or ${decimal}` : decimal;
    },
  },
  {
    name: 'a value with its uncertainty',
    example: { text: '281 fps +/- 2', dimension: 'speed' },
    pattern: pattern(
      String.raw`(?<value>${NUMBER})\s*(?<unit>[a-zA-Z%/ ]*?)\s*(?:\u00b1|\+\/?-)\s*${NUMBER}\s*(?<unitAfter>.*)`,
    ),
    code: 'unreadable',
    reason: (text) => `"${text}" is two numbers`,
    meant: (part, request) => {
      const value = quoted(part('value'), part('unit') || part('unitAfter'), request);
      return `${value}, and the uncertainty under the key that ends in _sd`;
    },
  },
  {
    name: 'from here to there',
    example: { text: '278-284 fps', dimension: 'speed' },
    pattern: pattern(
      String.raw`(?<from>\d+\.?\d*)\s*(?<unit>[a-zA-Z%/\u00b0]*)\s*(?:-|\u2013|\u2014|\.\.+|to)` +
        String.raw`\s*(?<to>\d+\.?\d*)\s*(?<unitAfter>[a-zA-Z%/\u00b0]*)`,
    ),
    code: 'unreadable',
    reason: (text) => `"${text}" is two numbers`,
    meant: (part, request) => {
      const mean = trimmed((Number(part('from')) + Number(part('to'))) / 2);
      return `${quoted(mean, part('unitAfter') || part('unit'), request)}, the mean of the two`;
    },
  },
  {
    name: 'a word for no number or an endless one',
    example: { text: '.inf m', dimension: 'length' },
    pattern: /^[+-]?(?:nan|\.?inf(?:inity)?)\b/i,
    code: 'not-finite',
    reason: (text) => `"${text}" is not a finite number`,
  },
  {
    name: 'words',
    example: { text: 'about 28 in', dimension: 'length' },
    pattern: new RegExp(`^(?!${NUMBER})`),
    code: 'no-number',
    reason: (text) => `"${text}" does not begin with a number`,
  },
  {
    name: 'a number too large to be held',
    example: { text: '1e999 in', dimension: 'length' },
    pattern: new RegExp(`^(?<number>${NUMBER})`),
    applies: (part) => !Number.isFinite(Number(part('number'))),
    code: 'not-finite',
    reason: (text) => `"${text}" is not a finite number`,
  },
  {
    name: 'a bare number',
    example: { text: '28.5', dimension: 'length' },
    pattern: pattern(NUMBER),
    code: 'no-unit',
    reason: (text) => `"${text}" has no unit`,
  },
  {
    name: 'a quantity too large to be held',
    example: { text: '1e308 km', dimension: 'length' },
    pattern: pattern(String.raw`${NUMBER}\s*(?<unit>[\s\S]*)`),
    applies: (part) => isUnit(part('unit')),
    code: 'not-finite',
    reason: (text) => `"${text}" is not a finite quantity`,
  },
  {
    name: 'a unit that is not known',
    example: { text: '28.5 inchs', dimension: 'length' },
    pattern: pattern(String.raw`(?<number>${NUMBER})\s*(?<unit>[\s\S]*)`),
    code: 'unknown-unit',
    reason: (text, part) => `"${text}" has a unit that quillpath does not know: "${part('unit')}"`,
    meant: (part, { dimension }) => {
      const unit = likelyUnit(part('unit').replace(/\.$/, ''), dimension);
      return unit === undefined ? undefined : `"${part('number')} ${unit}"`;
    },
  },
];

function likelyUnit(unit: string, dimension: Dimension): string | undefined {
  if (/^(#|pounds?)$/i.test(unit)) return dimension === 'force' ? 'lbf' : 'lb';
  return isUnit(unit) ? unit : nearestWord(unit, SPELLINGS[dimension]);
}

function isUnit(text: string): boolean {
  try {
    return dimensionOf(parseUnit(text)) !== undefined;
  } catch {
    return false;
  }
}
