import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = readFileSync('examples/which-build/setup.yaml', 'utf8');
/** As YAML writes them between quotation marks: what turns direction, and what a terminal obeys or writes over. */
const NAMES = ['good\\rBAD', 'a\\u202Eb', 'a\\u2066b', 'a\\u0085b', 'a\\u009B31mb', 'a\\x7Fb', 'a\\e[31mb'];
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be printed
const OBEYED = /\r(?!\n)|[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

describe.each(NAMES)('a title written "%s"', (name) => {
  const given = { 's.yaml': example.replace(/^title:.*$/m, `title: "${name}"`) };
  it.each([
    ['text', ['compare', 's.yaml', '--arrows', '0']],
    ['CSV', ['compare', 's.yaml', '--arrows', '0', '--csv']],
    ['JSON', ['compare', 's.yaml', '--arrows', '0', '--json']],
    ['SVG', ['compare', 's.yaml', '--arrows', '0', '--out', 'x.svg']],
  ])('is shown as text in %s', async (_, argv) => {
    const { code, out, files } = await atTerminal(argv, given);
    expect(code).toBe(0);
    expect(out).not.toMatch(OBEYED);
    for (const content of files.values()) expect(content).not.toMatch(OBEYED);
  });
  it('is the same title to a program that reads the JSON', async () => {
    const { out } = await atTerminal(['compare', 's.yaml', '--arrows', '0', '--json'], given);
    expect(JSON.parse(out).title).toBe(
      JSON.parse(`"${name.replace('\\x7F', '\\u007f').replace('\\e', '\\u001b')}"`),
    );
  });
});
