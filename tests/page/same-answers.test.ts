import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { QUESTIONS, type QuestionName } from '../../src/quillpath.ts';
import { atTerminal } from '../cli/terminal.ts';
import { fromDisk, hasChromium, type Opened, openPage, openSetupText, saved } from './browser.ts';

/** The day that the command line's tests have. */
const NOW = new Date(2026, 0, 2, 3, 4, 5);
const EXAMPLES = ['mountain-hunt', 'field-course', 'which-build', 'home-and-away'] as const;

/** What a question needs besides its defaults, or is asked so that it takes a moment and not a minute. */
const SAID: Partial<Record<QuestionName, Readonly<Record<string, string>>>> = {
  vary: { over: 'arrow.mass=440gr:460gr:20gr' },
  scatter: { arrows: '24' },
  compare: { arrows: '0' },
};
const names = Object.keys(QUESTIONS) as readonly QuestionName[];

/** One line of words, as a terminal folds it and a page does not. */
const unfolded = (text: string): string => text.replace(/\s+/g, ' ').trim();

describe.skipIf(!hasChromium).each(EXAMPLES)('the page and the command line on %s', (example) => {
  const path = `examples/${example}/setup.yaml`;
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage(fromDisk(), { now: NOW });
    await openSetupText(opened.page, 'setup.yaml', readFileSync(path, 'utf8'));
    await opened.page.goto(`${fromDisk()}#answers`);
  });
  afterAll(() => opened.close());

  it.each(names)('%s: the rows to the last digit, and the same first sentence', async (name) => {
    const { page } = opened;
    const { sheet, hasRows } = await QUESTIONS[name].question();
    const panel = page.locator(`[data-question="${name}"]`);
    await panel.locator('> summary').click();
    const said = Object.entries(SAID[name] ?? {});
    if (said.length > 0) await panel.getByText('Change what is asked').click();
    for (const [option, value] of said) await panel.locator(`[data-option="${option}"]`).fill(value);
    const paper = sheet?.when === 'always' ? ['--out', 'x.svg'] : [];
    const line = [name, path, ...said.flatMap(([option, value]) => [`--${option}`, value]), ...paper];
    const [short, whole] = [await atTerminal(line), await atTerminal([...line, '--all'])];
    if (short.err !== '') {
      // What cannot be answered is told in the same words: without builds there is nothing to compare.
      const [sentence = ''] = unfolded(short.err)
        .replace(/^\S+: /, '')
        .split('. ');
      await panel.locator('.warning[role="alert"]', { hasText: sentence }).waitFor();
      await panel.locator('> summary').click();
      return;
    }
    const report = panel.locator('.report');
    await report.waitFor();
    await panel.locator('.answer[aria-busy="false"]').waitFor();
    const verdict = report.locator('> .verdict');
    if ((await verdict.count()) > 0)
      expect(unfolded(short.out + whole.out)).toContain(
        unfolded((await verdict.first().textContent()) ?? ''),
      );
    if (hasRows) {
      const csv = await atTerminal([...line, '--csv']);
      const file = await saved(page, () => panel.getByRole('button', { name: 'Table as CSV' }).click());
      expect(file.name).toBe(`${name}.csv`);
      expect(file.bytes.toString('utf8')).toBe(csv.out);
    }
    await panel.locator('> summary').click();
  });

  it.each(['tape', 'card', 'fit'] as const)(
    '%s: the document to the last byte, as SVG and as PDF',
    async (name) => {
      const { page } = opened;
      const panel = page.locator(`[data-question="${name}"]`);
      await panel.locator('> summary').click();
      for (const ending of ['svg', 'pdf']) {
        const { files } = await atTerminal([name, path, '--out', `${name}.${ending}`]);
        const file = await saved(page, () => panel.locator(`[data-paper="${name}.${ending}"]`).click());
        expect(file.bytes.equals(Buffer.from(files.get(file.name) ?? ''))).toBe(true);
      }
      await panel.locator('> summary').click();
    },
  );

  it('complains of nothing and asks nobody else for anything', () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.requests.filter((address) => !address.startsWith('file:'))).toEqual([]);
  });
});
