import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { atTerminal } from '../cli/terminal.ts';
import { fromDisk, hasChromium, openPage, openSetupText, saved } from './browser.ts';

const text = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');

it.skipIf(!hasChromium)(
  'form and text are one: comments stay, problems lead to their line, undo takes back',
  async () => {
    const { page, close } = await openPage(fromDisk());
    await openSetupText(page, 'setup.yaml', text);
    await page.goto(`${fromDisk()}#bow`);
    const speed = page.locator('.bow [data-path="launch.speed"]');
    await speed.fill('290 fps');
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    const area = page.getByLabel('The setup as text');
    expect(await area.inputValue()).toBe(text.replace('speed: 283 fps', 'speed: 290 fps'));

    await area.fill(text.replace('peep_height:', 'peep_hight:'));
    const line = text.split('\n').findIndex((each) => each.includes('peep_height:')) + 1;
    const problem = page.locator('.problems button').first();
    await expect.poll(() => problem.textContent()).toContain(`Line ${line}: `);
    await problem.click();
    const [start, end] = (await page.evaluate(
      '[document.activeElement.selectionStart, document.activeElement.selectionEnd]',
    )) as [number, number];
    expect(text.replace('peep_height:', 'peep_hight:').slice(start, end)).toContain('peep_hight: 4.55 in');
    // Answers stay those of the last version without a problem, and the page says so.
    await page.getByText('Answers are for the last version without a problem').waitFor();

    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => area.inputValue()).toBe(text);
    await page.getByRole('button', { name: 'Redo' }).click();
    await page.getByRole('button', { name: 'Form', exact: true }).click();
    await expect.poll(() => speed.inputValue()).toBe('290 fps');
    await close();
  },
);

it.skipIf(!hasChromium)(
  'a chart tells its values by keyboard, and a slider of an option asks again',
  async () => {
    const { page, close } = await openPage(fromDisk());
    await openSetupText(page, 'setup.yaml', text);
    await page.goto(`${fromDisk()}#answers`);
    const wind = page.locator('[data-question="wind"]');
    await wind.locator('> summary').click();
    const plot = wind.getByRole('slider', { name: /drift/ }).first();
    await plot.focus();
    await page.keyboard.press('End');
    expect(await wind.locator('.plot-value').first().textContent()).toMatch(
      /^range 100 yd: .*from 3 o'clock -?[\d.]+ in/,
    );
    await wind.getByText('Change what is asked').click();
    await wind.getByLabel('speed, slider').fill('20');
    await expect.poll(() => wind.locator('.verdict').first().textContent()).toContain('20 mph');
    await close();
  },
);

it.skipIf(!hasChromium)('another speed is tried by sliding, and kept as a build of the file', async () => {
  const { page, complaints, close } = await openPage(fromDisk());
  await openSetupText(page, 'setup.yaml', text);
  await page.goto(`${fromDisk()}#answers`);
  const trial = page.locator('.try-out');
  await trial.locator('> summary').click();
  await trial.locator('[data-try="launch.speed"]').fill('270');
  await trial.locator('.report').waitFor();
  const build = `builds:\n  - { name: x, launch: { speed: 270 fps } }\n`;
  const line = ['marks', 'setup.yaml', '--build', 'x', '--from', '20 yd', '--every', '10 yd'];
  const { out } = await atTerminal(line, { 'setup.yaml': text + build });
  const verdict = (await trial.locator('.verdict').first().textContent()) ?? '';
  expect(out.replace(/\s+/g, ' ')).toContain(verdict.replace(/\s+/g, ' '));
  await trial.getByRole('button', { name: 'Keep as a build' }).click();
  await page.goto(`${fromDisk()}#bow`);
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  expect(await page.getByLabel('The setup as text').inputValue()).toBe(
    `${text.trimEnd()}\nbuilds:\n  - { name: 270 fps, launch: { speed: 270 fps } }\n`,
  );
  expect(complaints).toEqual([]);
  await close();
});

it.skipIf(!hasChromium)('what was shot can be left aside, as on the command line', async () => {
  const { page, close } = await openPage(fromDisk());
  await openSetupText(page, 'setup.yaml', text);
  await page.goto(`${fromDisk()}#answers`);
  const marks = page.locator('[data-question="marks"]');
  await marks.locator('> summary').click();
  await marks.getByText('Change what is asked').click();
  await marks.getByLabel('Leave aside what was shot').check();
  const { out } = await atTerminal(['marks', 'setup.yaml', '--uncalibrated', '--csv'], {
    'setup.yaml': text,
  });
  await expect
    .poll(async () => {
      const file = await saved(page, () => marks.getByRole('button', { name: 'Table as CSV' }).click());
      return file.bytes.toString('utf8');
    })
    .toBe(out);
  await close();
});
