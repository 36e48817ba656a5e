import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { fromDisk, hasChromium, openPage, openSetupText } from './browser.ts';

const text = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');

/** Between two frames, ms, on a machine whose cores are busy with other tests; alone it is some 20 ms. */
const LONGEST = 250;

it.skipIf(!hasChromium)('long work does not hold the page up, and a Stop ends it', async () => {
  const { page, close } = await openPage(fromDisk());
  await openSetupText(page, 'setup.yaml', text);
  await page.goto(`${fromDisk()}#answers`);
  const scatter = page.locator('[data-question="scatter"]');
  await scatter.locator('> summary').click();
  await scatter.getByRole('button', { name: 'Stop' }).waitFor();
  // The longest time between two frames while the worker works.
  const longest = Number(
    await page.evaluate(`new Promise((done) => {
      let last = performance.now(), most = 0, frames = 0;
      const step = (now) => {
        most = Math.max(most, now - last); last = now; frames += 1;
        frames < 60 ? requestAnimationFrame(step) : done(most);
      };
      requestAnimationFrame((now) => { last = now; requestAnimationFrame(step); });
    })`),
  );
  expect(longest).toBeLessThan(LONGEST);
  await scatter.getByRole('button', { name: 'Stop' }).click();
  await scatter.getByText('Stopped.').waitFor();
  expect(await scatter.locator('.report').count()).toBe(0);
  // After a Stop the next question is answered all the same.
  await scatter.getByText('Change what is asked').click();
  await scatter.locator('[data-option="arrows"]').fill('24');
  await scatter.locator('.report').waitFor();
  await close();
});
