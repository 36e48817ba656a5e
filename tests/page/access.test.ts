import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { fromDisk, hasChromium, openPage, openSetupText } from './browser.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const text = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/** What the rules of WCAG 2.2, levels A and AA, and of good practice find. */
async function violations(page: {
  evaluate: (script: string) => Promise<unknown>;
}): Promise<readonly string[]> {
  await page.evaluate(axe);
  const found = (await page.evaluate(
    'axe.run().then(({ violations }) => violations)',
  )) as readonly Violation[];
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
  );
}

describe.skipIf(!hasChromium)('everybody can use it', () => {
  it.each([360, 768, 1400])(
    'axe-core finds nothing at %d pixels',
    async (width) => {
      const { page, close } = await openPage(fromDisk(), { width, height: 800 });
      expect(await violations(page), 'first').toEqual([]);
      await openSetupText(page, 'setup.yaml', text);
      for (const area of ['bow', 'range', 'answers', 'keep']) {
        await page.goto(`${fromDisk()}#${area}`);
        if (area === 'answers')
          for (const name of ['marks', 'tape', 'wind']) {
            await page.locator(`[data-question="${name}"] > summary`).click();
            await page.locator(`[data-question="${name}"] .report`).waitFor();
          }
        if (area === 'range')
          for (const part of ['.wind', '.record']) await page.locator(`${part} > summary`).click();
        await page.waitForTimeout(300);
        expect(await violations(page), area).toEqual([]);
      }
      await close();
    },
    120_000,
  );

  it.each(['dark', 'red'])(
    'the contrast is enough in the colours "%s"',
    async (look) => {
      const { page, close } = await openPage(fromDisk(), { width: 768, height: 800 });
      await openSetupText(page, 'setup.yaml', text);
      await page.evaluate(`document.documentElement.setAttribute('data-look', '${look}')`);
      for (const area of ['range', 'bow', 'keep']) {
        await page.goto(`${fromDisk()}#${area}`);
        expect(
          (await violations(page)).filter((found) => found.startsWith('color-contrast')),
          area,
        ).toEqual([]);
      }
      await close();
    },
    60_000,
  );

  it('from an empty page to marks by keyboard alone', async () => {
    const { page, close } = await openPage(fromDisk(), { width: 1000, height: 800 });
    const tabTo = async (path: string): Promise<void> => {
      for (let presses = 0; presses < 40; presses += 1) {
        await page.keyboard.press('Tab');
        if ((await page.evaluate("document.activeElement?.getAttribute('data-path')")) === path) return;
      }
      throw new Error(`${path} cannot be reached by Tab`);
    };
    const typed = [
      ['launch.speed', '267 fps'],
      ['arrow.mass', '431 gr'],
      ['arrow.diameter', '0.244 in'],
      ['bow.peep_height', '4.4 in'],
      ['sight.peep_to_pin', '32 in'],
    ] as const;
    for (const [path, value] of typed) {
      await tabTo(path);
      await page.keyboard.type(value);
    }
    await page.locator('.result .verdict').waitFor();
    // Every control that Tab reaches is as large as a fingertip, and shows that it is reached.
    const outline = await page.evaluate(
      'getComputedStyle(document.activeElement).outlineStyle + getComputedStyle(document.activeElement).outlineWidth',
    );
    expect(outline).toBe('solid3px');
    await close();
  });

  it('every button and field is at least 44 pixels high', async () => {
    const { page, close } = await openPage(fromDisk(), { width: 360, height: 740 });
    await openSetupText(page, 'setup.yaml', text);
    for (const area of ['bow', 'range', 'answers', 'keep']) {
      await page.goto(`${fromDisk()}#${area}`);
      const small = await page.evaluate(`[...document.querySelectorAll(
          'button, select, summary, nav a, input:not([type=radio], [type=checkbox])')]
        .filter((each) => each.offsetParent !== null && each.getBoundingClientRect().height < 43.9)
        .map((each) => each.outerHTML.slice(0, 90))`);
      expect(small, area).toEqual([]);
    }
    await close();
  });
});
