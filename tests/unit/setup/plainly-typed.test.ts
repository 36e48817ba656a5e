import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSetup } from '../../../src/setup/read.ts';
import { withValues } from '../../../src/setup/write.ts';
import { plainlyTyped } from '../../../src/setup/yaml/plainly-typed.ts';

const example = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
const plain = readSetup(example, 'bow.yaml');

describe('a setup that went through a page, a word processor or an old editor', () => {
  it.each([
    ['blanks that do not break', example.replace(/^ +/gm, (spaces) => '\u00a0'.repeat(spaces.length))],
    ['such blanks among others', example.replace(/^ {2}/gm, ' \u202f')],
    ['long dashes before the entries of a list', example.replace(/^( +)- /gm, '$1\u2013 ')],
  ])('with %s is read as it was typed', (_, text) => {
    expect(text).not.toBe(example);
    expect(readSetup(text, 'bow.yaml')).toEqual(plain);
  });

  it('is written with its own blanks where nothing changes', () => {
    const text = example.replace(/^ {2}/gm, '\u00a0\u00a0');
    const changed = withValues(text, [{ path: ['bow', 'peep_height'], value: '4.6 in' }]);
    expect(changed).toBe(text.replace('peep_height: 4.55 in', 'peep_height: 4.6 in'));
  });
});

it('keeps every character in its place, and those within a line as they are', () => {
  const text = '\u2013 a\u00a0b \u2013 c\n\u3000\u3000d: e\u2009f\r\n\u2014g\n';
  expect(plainlyTyped(text)).toBe('- a\u00a0b \u2013 c\n  d: e\u2009f\r\n\u2014g\n');
});
