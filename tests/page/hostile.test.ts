import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fromDisk, hasChromium, type Opened, openPage, openSetupText } from './browser.ts';

const example = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
const MARKUP = '<img src=x onerror="document.title=1"><script>document.title=2</script>';

describe.skipIf(!hasChromium)('files from elsewhere', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage(fromDisk());
  });
  afterAll(() => opened.close());

  it('markup in a title and in a name is shown as it is written', async () => {
    const { page } = opened;
    const titled = example
      .replace(/^title: .*/m, `title: '${MARKUP}'`)
      .replaceAll(/arrows: (\d+)/g, `arrows: $1, note: '${MARKUP}'`);
    const text = `${titled}builds:
  - { name: '${MARKUP}', launch: { speed: 280 fps } }
places:
  - { name: '${MARKUP}', altitude: 7000 ft }
tuning: { log: [{ step: nock, date: 2026-04-18, serving: [0.109 in], note: '${MARKUP}' }] }
`;
    await openSetupText(page, 'a.yaml', text);
    await expect.poll(() => page.locator('h1').textContent()).toBe(MARKUP);
    await page.goto(`${fromDisk()}#answers`);
    for (const name of ['check', 'tape', 'marks', 'fit', 'compare', 'tune']) {
      await page.locator(`[data-question="${name}"] > summary`).click();
      await page.locator(`[data-question="${name}"] .report`).waitFor();
    }
    expect(await page.locator('main img, main script').count()).toBe(0);
  });

  it.each([
    ['nested by the thousand', '['.repeat(50_000)],
    ['nested sections', Array.from({ length: 200 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
    ['aliases that multiply', `a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]\n`],
    ['10 MB', `title: x\n#${'x'.repeat(10_000_000)}`],
    ['no text at all', '\u0000\u0001\u0002'],
  ])('%s: a message, and nothing else', async (_, text) => {
    const { page } = opened;
    await openSetupText(page, 'b.yaml', text);
    await page.goto(`${fromDisk()}#bow`);
    await page.locator('.problems li').first().waitFor();
    expect(opened.complaints).toEqual([]);
  });

  it('a file of 20 MB is refused', async () => {
    const { page } = opened;
    await page.goto(`${fromDisk()}#keep`);
    const choosing = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open files' }).click();
    await (await choosing).setFiles({
      name: 'c.yaml',
      mimeType: 'text/plain',
      buffer: Buffer.alloc(20_000_000, 'x'),
    });
    await page.locator('.message', { hasText: 'c.yaml is too long' }).waitFor();
  });
});
