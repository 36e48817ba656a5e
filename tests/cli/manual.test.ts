import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { manualPage } from '../../src/cli/manual/manual-page.ts';
import { asTyped, paragraph, roffText, term } from '../../src/cli/manual/roff.ts';
import { atTerminal } from './terminal.ts';

const isHere = (program: string): boolean => spawnSync(program, ['--version']).error === undefined;
const SILENT = {
  out: () => undefined,
  err: () => undefined,
  readText: () => '',
  fonts: async () => ({ font: new Uint8Array(), boldFont: new Uint8Array() }),
  exists: () => false,
  writeWhole: () => undefined,
  now: () => new Date(0),
  columns: null,
};

/** What a formatter prints of a page, as plain text in one long line for each paragraph. */
function formatted(roff: string): string {
  const { stdout, stderr } = spawnSync('groff', ['-man', '-ww', '-Tutf8', '-P-cbou', '-rLL=5000n'], {
    input: roff,
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  return stdout;
}

/** Texts that mean something to the formatter, each with what is written for it. @source groff_man_style(7), groff_char(7) */
const TOUCHY = [
  ['--no-color', String.raw`\-\-no\-color`],
  ['.5 in', String.raw`\&.5 in`],
  ["'tis", String.raw`\(aqtis`],
  [String.raw`C:\new`, String.raw`C:\enew`],
  ['5 "in"', String.raw`5 \(dqin\(dq`],
  ['± 3°', String.raw`\[u00B1] 3\[u00B0]`],
  ['a ~ b ^ c `d`', String.raw`a \(ti b \(ha c \(gad\(ga`],
] as const;

describe('text of a manual page', () => {
  it.each(TOUCHY)('%s is no request to the formatter', (text, written) =>
    expect(roffText(text)).toBe(written),
  );
  it('is so at the beginning of every line', () =>
    expect(asTyped(['.a', 'b', '.c'])).toBe('.PP\n.nf\n.RS 4\n\\&.a\nb\n\\&.c\n.RE\n.fi'));
  it.skipIf(!isHere('groff'))('is printed as it was, where groff can show it', () => {
    const head = '.TH X 1 "" ""\n.SH Y';
    for (const [text] of TOUCHY) {
      expect(formatted(`${head}\n${paragraph(text)}\n`)).toContain(text);
      expect(formatted(`${head}\n${term(text, text)}\n`).split(text).length).toBe(3);
      expect(formatted(`${head}\n${asTyped([text])}\n`)).toContain(text);
    }
  });
});

describe('the manual page', async () => {
  const page = await manualPage(SILENT);
  /** As a reader sees it. */
  const read = page.replaceAll(String.raw`\-`, '-');

  it('has the usual sections in their usual order', () =>
    expect([...page.matchAll(/^\.SH (.*)$/gm)].map(([, title]) => title)).toEqual([
      'NAME',
      'SYNOPSIS',
      'DESCRIPTION',
      'COMMANDS',
      'OPTIONS',
      'EXIT STATUS',
      'FILES',
      'EXAMPLES',
    ]));
  it('has every command, and every option and example of its help', async () => {
    const { out } = await atTerminal(['--help']);
    const list = out.slice(out.indexOf('\nCommands:'));
    const names = [...list.matchAll(/^ {2}(\w+) /gm)].map(([, name]) => `${name}`);
    expect(names.length).toBeGreaterThan(19);
    for (const name of names.filter((each) => each !== 'help')) {
      const start = read.indexOf(`.SS ${name}\n`);
      expect(start, name).toBeGreaterThan(0);
      const part = read.slice(start, read.indexOf('\n.S', start + 4));
      const { out: help } = await atTerminal([name, '--help']);
      const options = [...help.matchAll(/^ {2}(?:-\w, )?(--[\w-]+(?: <[^>]+>)?)/gm)].map(
        ([, found]) => `${found}`,
      );
      expect(options.length).toBeGreaterThan(0);
      for (const option of options) {
        expect(part, `${option} of ${name}`).toContain(option);
        // Explained there, or once for all under OPTIONS.
        expect(`${part}${read.slice(read.indexOf('.SH OPTIONS'))}`).toMatch(
          new RegExp(`^\\.B (-\\w, )?${option}$`, 'm'),
        );
      }
      for (const [, line = ''] of help.matchAll(/^ {2}(quillpath .*)$/gm))
        expect(read).toContain(roffText(line).replaceAll(String.raw`\-`, '-'));
    }
  });
  it('is the same each time', async () => expect(await manualPage(SILENT)).toBe(page));
  it.skipIf(!isHere('groff'))('has nothing that groff warns of, where it is installed', () => {
    const text = formatted(page);
    expect(text).toContain('--sea-level-pressure <pressure>');
    expect(text).toMatch(/^ {2,}quillpath fly setup\.yaml/m);
  });
  it.skipIf(!isHere('mandoc'))('has nothing that mandoc warns of, where it is installed', () => {
    const { stdout } = spawnSync('mandoc', ['-T', 'lint', '-W', 'warning'], {
      input: page,
      encoding: 'utf8',
    });
    // It has no date, so that the same program gives the same bytes.
    expect(stdout.split('\n').filter((line) => line !== '' && !line.includes('missing date'))).toEqual([]);
  });
});
