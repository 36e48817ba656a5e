import { expect, it } from 'vitest';
import {
  LACKING_SIGN,
  printableText,
  textInTypeface,
} from '../../../../src/documents/page/printable-text.ts';

it.each([
  ['a\nb\tc\u0000d\u007fe', 'a b c d e'],
  ['\ud800 alone, \udc00 alone', '\ufffd alone, \ufffd alone'],
  ['\uffff', '\ufffd'],
  ['Ünïcode 弓 🏹 ok', 'Ünïcode 弓 🏹 ok'],
])('carries %j as %j', (given, carried) => expect(printableText(given)).toBe(carried));

it('shows a box for what the typeface lacks, names it, and leaves out what has no shape', () => {
  const ascii = (codePoint: number) => codePoint < 128;
  expect(textInTypeface('a 🏹\uFE0F\u200D b 弓', ascii)).toEqual({
    text: `a ${LACKING_SIGN} b ${LACKING_SIGN}`,
    lacking: ['🏹', '弓'],
  });
});
