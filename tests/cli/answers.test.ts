import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const SCATTER = ['--arrows', '24', '--from', '40yd', '--to', '40yd'];
const CASES: readonly (readonly string[])[] = [
  ['fly', example],
  ['marks', example],
  ['fit', example],
  ['tape', example, '--out', 't.svg'],
  ['card', example, '--out', 'c.svg'],
  ['cant', example],
  ['slope', example],
  ['misjudge', example],
  ['wind', example],
  ['swing', example],
  ['broadhead', example],
  ['scatter', example, ...SCATTER],
  ['vary', example, '--over', 'arrow.parts.point.mass=100gr:125gr:25gr', '--at', '40.25yd,40.5yd'],
  ['tune', example],
];

describe('the columns of a file for a spreadsheet', () => {
  it.each(CASES)('%s: every one has a name of its own', async (...argv) => {
    const { out, code } = await atTerminal([...argv, '--csv']);
    expect(code).toBe(0);
    const [header = ''] = out.split(/\r?\n/);
    const names = header.match(/"(?:[^"]|"")*"|[^,]+/g) ?? [];
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('--units metric', () => {
  it.each([
    [['marks', example], 10, 100],
    [['fly', example], 5, 100],
    [['misjudge', example], 20, 60],
  ])('%s: the rows nobody named are round metres', async (argv, first, last) => {
    const { rows } = JSON.parse((await atTerminal([...argv, '--units', 'metric', '--json'])).out);
    expect(rows[0].range_m).toBe(first);
    expect(rows.at(-1).range_m).toBe(last);
  });
  it('what somebody named stays', async () => {
    const argv = ['fly', example, '--to', '20yd', '--units', 'metric', '--json'];
    expect(JSON.parse((await atTerminal(argv)).out).rows.at(-1).range_m).toBe(15);
  });
  it('the help names both', async () => {
    expect((await atTerminal(['fly', '--help'])).out.replace(/\s+/g, ' ')).toContain(
      '"100 yd"; with --units metric "100 m"',
    );
  });
});

it('escape codes of a title do not reach the terminal', async () => {
  const text = readFileSync(example, 'utf8').replace(/^title:.*$/m, 'title: "red \\e[31m bow"');
  const { out, code } = await atTerminal(['marks', 'e.yaml'], { 'e.yaml': text });
  expect(code).toBe(0);
  expect(out).not.toContain('\u001b');
});

it('a setup file that is a folder is called one, and nothing is offered to make it', async () => {
  const { err, code } = await atTerminal(['check', 'examples']);
  expect(code).toBe(2);
  expect(err).toBe('examples: is a folder. Name a file in it.\n');
});
