import type { ErrorCode } from 'yaml';

interface Words {
  readonly reason: string;
  readonly allowed: string;
  readonly write: string;
}

const INDENT: Words = {
  reason: 'the line does not stand under the one it belongs to',
  allowed: 'keys of one section in one column',
  write: 'Give it as many spaces in front as its neighbours have',
};
const COLON: Words = {
  reason: 'there is one colon too many',
  allowed: 'one "key: value" on a line, or several between { }',
  write: 'Put it on a line of its own, or a text with a colon in quotation marks',
};
const PLAIN: Words = {
  reason: 'there is something that is neither a key nor a value',
  allowed: 'a key, a colon, and a value',
  write: 'Write it as in "speed: 281 fps"',
};

/** The faults of a hand-written file; the rarer ones are told apart by their place alone. */
const WORDS: Partial<Record<ErrorCode, Words>> = {
  TAB_AS_INDENT: {
    reason: 'there is a tab in front of the line',
    allowed: 'spaces in front of a line',
    write: 'Write two spaces instead of each tab',
  },
  BAD_INDENT: INDENT,
  BLOCK_AS_IMPLICIT_KEY: COLON,
  MULTILINE_IMPLICIT_KEY: {
    reason: 'there is no colon after the key',
    allowed: 'a key, a colon, and a value',
    write: 'Write a colon and a space after the key, as in "speed: 281 fps"',
  },
  MISSING_CHAR: {
    reason: 'something that was opened is not closed: a quotation mark, a bracket, a colon after a key',
    allowed: 'quotation marks and brackets in pairs, and a colon after each key',
    write: 'Close it, or add the colon',
  },
  BLOCK_IN_FLOW: {
    reason: 'there is a line with a key inside { } or [ ]',
    allowed: 'commas between the entries inside brackets',
    write: 'Close the bracket before the line, or put a comma in front of it',
  },
  MULTIPLE_DOCS: {
    reason: 'a second file begins here',
    allowed: 'one setup in one file',
    write: 'Remove the line "---" and what follows it',
  },
  UNEXPECTED_TOKEN: {
    reason: 'something follows where the value has ended',
    allowed: 'one value after a key',
    write: 'Put the whole value inside quotation marks, or outside of them',
  },
  BAD_SCALAR_START: {
    reason: 'the value begins with a character that has a meaning of its own',
    allowed: 'a letter, a digit, a sign or a point at the beginning',
    write: 'Put the value in quotation marks',
  },
  RESOURCE_EXHAUSTION: {
    reason: 'sections stand inside one another too deep',
    allowed: 'sections at most four deep',
    write: 'Remove the extra brackets or levels',
  },
};

/** What a fault of the YAML text means to someone who has never heard of YAML. */
export const inOwnWords = (code: ErrorCode): Words => WORDS[code] ?? PLAIN;
