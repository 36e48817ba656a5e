import { expect, it } from 'vitest';
import { printableText } from '../../../src/documents/printable-text.ts';

it.each([
  ['a\nb\tc\u0000d\u007fe', 'a b c d e'],
  ['\ud800 alone, \udc00 alone', '\ufffd alone, \ufffd alone'],
  ['\uffff', '\ufffd'],
  ['Ünïcode 弓 🏹 ok', 'Ünïcode 弓 🏹 ok'],
])('carries %j as %j', (given, carried) => expect(printableText(given)).toBe(carried));
