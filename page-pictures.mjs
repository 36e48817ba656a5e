#!/usr/bin/env node
/**
 * Pictures of the main screens of the built page at the width of a phone and of a desk, into out/: to be looked at. With "guide" as the
 * argument it writes those of the README and of the guide, into guide/.
 */
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const root = dirname(fileURLToPath(import.meta.url));
const address = pathToFileURL(join(root, 'dist', 'page', 'index.html')).href;
const WIDTHS = { phone: { width: 360, height: 740 }, desk: { width: 1400, height: 900 } };
const isGuide = process.argv[2] === 'guide';

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
mkdirSync(join(root, 'out'), { recursive: true });

async function openExample(viewport, look, deviceScaleFactor = 2) {
  const page = await browser.newPage({ viewport, deviceScaleFactor });
  if (look !== undefined)
    await page.addInitScript((name) => localStorage.setItem('quillpath-look', name), look);
  await page.goto(address);
  await page.getByRole('button', { name: 'Try the example' }).click();
  await page.locator('.digits').getByText(/\d/).first().waitFor();
  return page;
}

async function pictures(name, viewport) {
  const shoot = async (page, what, fullPage = true) => {
    await page.waitForTimeout(700);
    await page.screenshot({ path: join(root, 'out', `page-${name}-${what}.png`), fullPage });
  };
  const empty = await browser.newPage({ viewport });
  await empty.goto(address);
  await shoot(empty, 'first');
  const page = await openExample(viewport);
  await shoot(page, 'range', false);
  await page.locator('.wind > summary').click();
  await page.locator('.record > summary').click();
  const face = page.locator('.face');
  await face.scrollIntoViewIfNeeded();
  for (const [x, y] of [
    [0.45, 0.5],
    [0.55, 0.42],
    [0.52, 0.6],
  ]) {
    const box = await face.boundingBox();
    await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
  }
  await shoot(page, 'range-open');
  await page.getByRole('link', { name: 'Bow' }).click();
  await shoot(page, 'bow', false);
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  await shoot(page, 'text', false);
  await page.getByRole('link', { name: 'Answers' }).click();
  for (const question of ['marks', 'tape', 'wind', 'fly', 'swing']) {
    await page.locator(`[data-question="${question}"] > summary`).click();
    await page.locator(`[data-question="${question}"] .report`).waitFor();
  }
  await shoot(page, 'answers');
  await page.getByRole('link', { name: 'Keep' }).click();
  await shoot(page, 'keep', false);
}

/** One screen a task, as the guide shows it. */
async function guide() {
  const viewport = { width: 1120, height: 720 };
  const shoot = async (page, what) => {
    await page.waitForTimeout(900);
    await page.screenshot({ path: join(root, 'guide', `${what}.png`) });
  };
  mkdirSync(join(root, 'guide'), { recursive: true });
  const empty = await browser.newPage({ viewport });
  await empty.goto(address);
  await shoot(empty, 'first');
  const page = await openExample(viewport, undefined, 1);
  await page.getByRole('button', { name: 'Shoot next' }).waitFor();
  await shoot(page, 'range');
  const ask = async (question, what) => {
    await page.getByRole('link', { name: 'Answers' }).click();
    const panel = page.locator(`[data-question="${question}"]`);
    await panel.locator('> summary').click();
    await panel.locator('.report').waitFor();
    await panel.scrollIntoViewIfNeeded();
    await panel.evaluate((node) => scrollTo(0, node.getBoundingClientRect().top + scrollY - 12));
    await shoot(page, what);
    await panel.locator('> summary').click();
  };
  await ask('tape', 'tape');
  await ask('cant', 'lean');
  await page.getByRole('link', { name: 'Keep' }).click();
  await page.getByRole('button', { name: 'Which build' }).click();
  await page.locator('main[data-area="range"]').waitFor();
  await page.getByRole('link', { name: 'Answers' }).click();
  await ask('compare', 'which-arrow');
}

if (isGuide) await guide();
else {
  for (const [name, viewport] of Object.entries(WIDTHS)) await pictures(name, viewport);
  for (const look of ['dark', 'red']) {
    const page = await openExample(WIDTHS.phone, look);
    await page.waitForTimeout(500);
    await page.screenshot({ path: join(root, 'out', `page-phone-${look}.png`) });
  }
}
await browser.close();
