import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';

describe('add', () => {
  const marked = { 'm.yaml': readFileSync(example, 'utf8') };
  it('puts a mark into the file, says how it was understood, and changes nothing else', async () => {
    const { files, code, out } = await atTerminal(
      ['add', 'm.yaml', '70 yd 31.4 6 arrows 5 in 1 in low'],
      marked,
    );
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Understood: range 70 yd, reading 31.4, arrows 6, group 5 in, vertical -1 in\.\nm.yaml, line \d+: /,
    );
    const text = String(files.get('m.yaml'));
    const [line = ''] = text.split('\n').filter((each) => !marked['m.yaml'].includes(each));
    expect(line).toContain('{ range: 70 yd, reading: 31.4, arrows: 6, group: 5 in, vertical: -1 in }');
    expect(text.replace(`${line}\n`, '')).toBe(marked['m.yaml']);
  });
  it('puts a mark under the day that it is told, and says so', async () => {
    const away = readFileSync('examples/home-and-away/setup.yaml', 'utf8');
    const { files, code, out } = await atTerminal(
      ['add', 'a.yaml', '40 yd 22.9 3 arrows', '--day', '2026-10-17'],
      { 'a.yaml': away },
    );
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Understood: day 2026-10-17, range 40 yd, reading 22.9, arrows 3\.\na.yaml, line 41: /,
    );
    const lines = away.split('\n');
    const added = '      - { range: 40 yd, reading: 22.9, arrows: 3 }';
    expect(files.get('a.yaml')).toBe([...lines.slice(0, 40), added, ...lines.slice(40)].join('\n'));
  });
  it.each([
    ['words', ['add', 'm.yaml', '60 yd about 31'], /"about 31" cannot be understood.*60 yd 31\.9/],
    ['a range out of reach', ['add', 'm.yaml', '900 yd 31'], /above the limit/],
    ['standard input', ['add', '-', '60 yd 31'], /standard input cannot be written/],
  ])('%s it cannot use leaves the file as it is', async (_, argv, message) => {
    const seen = await atTerminal(argv, marked);
    expect([seen.code, seen.files.size]).toEqual([2, 0]);
    expect(seen.err).toMatch(message);
  });
});
