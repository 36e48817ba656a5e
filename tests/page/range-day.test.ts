import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { atTerminal } from '../cli/terminal.ts';
import { fromDisk, hasChromium, type Opened, openPage, openSetupText, saved } from './browser.ts';

const text = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');

/** The columns of a CSV by name. */
const rowOf = (csv: string): Readonly<Record<string, string>> => {
  const [names = '', row = ''] = csv.split('\r\n');
  const cells = row.split(',');
  return Object.fromEntries(names.split(',').map((name, i) => [name, cells[i] ?? '']));
};

describe.skipIf(!hasChromium)('a day at the range, on a phone of 360 pixels', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage(fromDisk(), { width: 360, height: 740, touch: true });
    await openSetupText(opened.page, 'setup.yaml', text);
    await opened.page.locator('.tape-strip svg').waitFor();
  });
  afterAll(() => opened.close());

  it.each(['43.5', '62', '100'])(
    '%s yd typed gives the mark and its error as the command line prints them',
    async (range) => {
      const { page } = opened;
      await page.getByLabel('Range', { exact: true }).fill(range);
      const { out } = await atTerminal(
        ['marks', 'setup.yaml', '--from', `${range} yd`, '--to', `${range} yd`, '--csv'],
        {
          'setup.yaml': text,
        },
      );
      const row = rowOf(out);
      await expect.poll(() => page.locator('.digits').textContent()).toBe(`${row['reading (scale)']} scale`);
      expect(await page.locator('.error-words').textContent()).toBe(
        `± ${row['± (scale)']} on the sight, ± ${row['± on target (in)']} in on the target`,
      );
    },
  );

  it('a finger on the tape chooses a range', async () => {
    const { page } = opened;
    const box = await page.locator('.tape-strip').boundingBox();
    if (box === null) throw new Error('the tape is not on the screen');
    await page.touchscreen.tap(box.x + 22, box.y + 50);
    await expect.poll(() => page.getByLabel('Range', { exact: true }).inputValue()).toBe('20');
  });

  it('the clock tells the drift as the command line prints it', async () => {
    const { page } = opened;
    await page.getByLabel('Range', { exact: true }).fill('60');
    await page.locator('.wind > summary').tap();
    await page.getByRole('radio', { name: "from 9 o'clock" }).tap();
    const line = ['wind', 'setup.yaml', '--from', '60 yd', '--to', '60 yd', '--speed', '10 mph', '--csv'];
    const { out } = await atTerminal(line, { 'setup.yaml': text });
    const drift = out
      .split('\r\n')
      .find((row) => row.startsWith("9 o'clock"))
      ?.split(',')[2];
    await expect.poll(() => page.locator('.drift').textContent()).toBe(`${drift} in right`);
    await page.locator('.wind > summary').tap();
  });

  it('hits that are tapped on the face become a mark of the file, and the fit counts it', async () => {
    const { page } = opened;
    await page.getByLabel('Range', { exact: true }).fill('100');
    await page.locator('.record > summary').tap();
    await page.getByLabel('Face, across').selectOption('400');
    await page.getByLabel('What the scale reads').fill('49.8');
    const face = page.locator('.face');
    await face.scrollIntoViewIfNeeded();
    const tapAt = async (right: number, high: number): Promise<void> => {
      const box = await face.boundingBox();
      if (box === null) throw new Error('the face is not on the screen');
      await page.touchscreen.tap(box.x + (0.5 + right) * box.width, box.y + (0.5 - high) * box.height);
    };
    await tapAt(0.2, 0.2);
    await tapAt(-0.2, 0.1);
    await tapAt(0.3, -0.3);
    await page.locator('.record').getByRole('button', { name: 'Undo' }).tap();
    await tapAt(0.0, -0.3);
    // The face with its margin is 520 mm wide: by hand, the middle is 0 right, 0 high; the farthest two are 0.539 of it apart.
    expect(await page.locator('.group-words').textContent()).toMatch(
      /^Middle 0\.[01] in (left|right), 0\.[01] in (low|high); the two farthest are 11\.0 in apart\.$/,
    );
    await page.getByRole('button', { name: 'Keep this mark' }).tap();
    await page.locator('.message', { hasText: 'Kept the mark at 100 yd' }).waitFor();
    await page.goto(`${fromDisk()}#keep`);
    const setup = await saved(page, () => page.getByRole('button', { name: 'Save as a file' }).click());
    const kept = setup.bytes.toString('utf8');
    expect(kept.startsWith(text.trimEnd())).toBe(true);
    const added = kept.slice(text.trimEnd().length);
    expect(added.match(/\bin\b/g)?.length).toBe(6);
    const { out, code } = await atTerminal(['fit', 'setup.yaml', '--json'], { 'setup.yaml': kept });
    expect(code).toBe(0);
    expect(JSON.parse(out).residuals).toHaveLength(5);
  });

  it('nothing is wider than the screen', async () => {
    for (const area of ['first', 'bow', 'range', 'answers', 'keep']) {
      await opened.page.goto(`${fromDisk()}#${area}`);
      expect(await opened.page.evaluate('document.documentElement.scrollWidth'), area).toBe(360);
    }
    expect(opened.complaints).toEqual([]);
  });
});
