import type { ErrorCode, YAMLParseError } from 'yaml';

/** A fault, explained to someone who has never heard of YAML. */
export interface Words {
  readonly reason: string;
  readonly allowed: string;
  readonly write: string;
}

const INDENT: Words = {
  reason: 'the line is not indented like the others in its section',
  allowed: 'all keys of a section in the same column',
  write: 'Put as many spaces in front of it as its neighbours have',
};
const COLON: Words = {
  reason: 'there is one colon too many',
  allowed: 'one "key: value" on a line, or several between { }',
  write: 'Put it on a line of its own, or a text with a colon in quotation marks',
};
const BRACKET: Words = {
  reason: 'a bracket is not closed, or a comma between its entries is missing',
  allowed: 'brackets in pairs, with commas between the entries',
  write: 'Close the bracket before this point, or add the comma',
};
const QUOTE: Words = {
  reason: 'a quotation mark is not closed',
  allowed: 'quotation marks in pairs',
  write: 'Close it at the end of the value, or leave it out',
};
const NO_COLON: Words = {
  reason: 'there is no colon after the key',
  allowed: 'a key, a colon, a space, and a value',
  write: 'Write a colon and a space after the key, as in "speed: 281 fps"',
};
const PLAIN: Words = {
  reason: 'there is something that is neither a key nor a value',
  allowed: 'a key, a colon, and a value',
  write: 'Write it as in "speed: 281 fps"',
};

/** The faults of a hand-written file; the rarer ones are distinguished by their place alone. */
const WORDS: Partial<Record<ErrorCode, Words>> = {
  TAB_AS_INDENT: {
    reason: 'there is a tab in front of the line',
    allowed: 'spaces in front of a line',
    write: 'Write two spaces instead of each tab',
  },
  BAD_INDENT: INDENT,
  BLOCK_AS_IMPLICIT_KEY: COLON,
  MULTILINE_IMPLICIT_KEY: {
    reason: 'the next line is indented further than this one, which already has its value',
    allowed: 'all keys of a section in the same column',
    write: 'Start the next line in the same column as this one, or write nothing after the colon here',
  },
  BLOCK_IN_FLOW: BRACKET,
  MULTIPLE_DOCS: {
    reason: 'a second file begins here',
    allowed: 'one setup in one file',
    write: 'Remove the line "---" and what follows it',
  },
  UNEXPECTED_TOKEN: {
    reason: 'there is something after the end of the value',
    allowed: 'one value after a key',
    write: 'Put the whole value inside quotation marks, or none of it',
  },
  BAD_SCALAR_START: {
    reason: 'the value begins with a character that has a special meaning',
    allowed: 'a letter, a digit, a sign or a decimal point at the beginning',
    write: 'Put the value in quotation marks',
  },
  RESOURCE_EXHAUSTION: {
    reason: 'sections are nested too deep',
    allowed: 'sections at most four deep',
    write: 'Remove the extra brackets or levels',
  },
};

const QUOTE_PATTERN = /closing ['"]quote/;

/** Faults that share a code and differ in what YAML's own message says. */
const BY_MESSAGE: readonly (readonly [RegExp, Words])[] = [
  [QUOTE_PATTERN, QUOTE],
  [/^Flow (map|sequence)/, BRACKET],
  [/followed by map values/, NO_COLON],
];

/** What a fault of the YAML text means to someone who has never heard of YAML. */
export const inOwnWords = ({ code, message }: Pick<YAMLParseError, 'code' | 'message'>): Words =>
  BY_MESSAGE.find(([pattern]) => pattern.test(message))?.[1] ?? WORDS[code] ?? PLAIN;

/** Whether the fault is a quotation that runs to the end of the file: it is reported where the quotation begins. */
export const isOpenQuotation = ({ message }: Pick<YAMLParseError, 'message'>): boolean =>
  QUOTE_PATTERN.test(message);
