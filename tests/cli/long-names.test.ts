import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

/** The words of an SVG and whether each line of them ends on the paper. */
const textsIn = (svg: string | Uint8Array | undefined): readonly string[] =>
  [...String(svg).matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text);

describe('what is longer than the paper is cut on it, and that is said', () => {
  it('names of builds', async () => {
    const file = readFileSync('examples/which-build/setup.yaml', 'utf8');
    const long = file.replace('name: slim shaft', `name: ${'a slim shaft '.repeat(22)}`);
    expect(long).not.toBe(file);
    const { out, err, code, files } = await atTerminal(
      ['compare', 'long.yaml', '--arrows', '0', '--out', 'sheet.svg'],
      { 'long.yaml': long },
    );
    expect([err, code]).toEqual(['', 0]);
    expect(out).toContain('Wrote sheet.svg: names of builds are cut short to fit the page.');
    const texts = textsIn(files.get('sheet.svg'));
    expect(texts.join(' ')).toContain('Names of builds are cut short to fit the page.');
    expect(texts.some((text) => /^a slim.*…$/.test(text))).toBe(true);
  });

  it('not names that fit', async () => {
    const { out } = await atTerminal([
      'compare',
      'examples/which-build/setup.yaml',
      '--arrows',
      '0',
      '--out',
      'sheet.svg',
    ]);
    expect(out).toContain('Wrote sheet.svg.');
  });

  it.each(['tape', 'card'])('a title on a %s is broken into lines', async (command) => {
    const file = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
    for (const title of ['x'.repeat(300), 'a long title '.repeat(22)]) {
      const { err, code } = await atTerminal([command, 'long.yaml', '--out', 'sheet.pdf'], {
        'long.yaml': file.replace(/^title: .*$/m, `title: ${title}`),
      });
      expect([err, code]).toEqual(['', 0]);
    }
  });
});
