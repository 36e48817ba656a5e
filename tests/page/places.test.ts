import { describe, expect, it } from 'vitest';
import { fromDisk, hasChromium, type Opened, openPage, saved, served } from './browser.ts';

/** The example, its marks by a worker of its own, and a PDF: every script of the page is needed for it. */
async function useAll({ page }: Opened): Promise<Buffer> {
  await page.getByRole('button', { name: 'Try the example' }).click();
  await page.locator('.digits').getByText(/\d/).first().waitFor();
  await page.getByRole('link', { name: 'Answers' }).click();
  const wind = page.locator('[data-question="wind"]');
  await wind.locator('> summary').click();
  await wind.locator('.report .verdict').first().waitFor();
  const tape = page.locator('[data-question="tape"]');
  await tape.locator('> summary').click();
  return (await saved(page, () => tape.getByRole('button', { name: 'PDF to print' }).click())).bytes;
}

const NOW = new Date(2026, 0, 2, 3, 4, 5);

describe.skipIf(!hasChromium)('the same page from everywhere', () => {
  it('a folder on the disk, one file on the disk, a sub-folder of a host with its policy, and no network', async () => {
    const folder = await openPage(fromDisk(), { now: NOW });
    const pdf = await useAll(folder);
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(folder.complaints).toEqual([]);
    await folder.close();

    const single = await openPage(fromDisk('quillpath.html'), { now: NOW });
    expect((await useAll(single)).equals(pdf)).toBe(true);
    expect(single.complaints).toEqual([]);
    expect(single.requests).toEqual([fromDisk('quillpath.html')]);
    await single.close();

    const { address, server } = await served('/some/where/');
    const hosted = await openPage(address, { now: NOW });
    expect((await useAll(hosted)).equals(pdf)).toBe(true);
    expect(hosted.requests.filter((asked) => !asked.startsWith(address))).toEqual([]);
    // Kept for the time without a network: the server is closed before the page is opened again.
    await hosted.page.evaluate('navigator.serviceWorker.ready.then(() => true)');
    await expect.poll(() => hosted.page.evaluate('caches.keys().then((names) => names.length)')).toBe(1);
    await new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
    await hosted.page.goto(`${address}#range`);
    await hosted.page.reload();
    await hosted.page.locator('.digits').getByText(/\d/).first().waitFor();
    await hosted.page.getByRole('link', { name: 'Answers' }).click();
    const cant = hosted.page.locator('[data-question="cant"]');
    await cant.locator('> summary').click();
    await cant.locator('.report .verdict').first().waitFor();
    expect(hosted.complaints).toEqual([]);
    await hosted.close();
  }, 120_000);
});
