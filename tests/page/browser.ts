import { readFileSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, inject } from 'vitest';
import { pageServer } from '../../page.mjs';

/** Tests that need a browser are skipped without one, and the run says so by name. */
export const hasChromium = inject('chromium') !== null;

let browser: Promise<Browser> | undefined;
afterAll(async () => (await browser)?.close());

/** One page in a fresh browser profile, with all that it complained of and all that it asked for. */
export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Messages of the console and errors that nobody caught. */
  readonly complaints: readonly string[];
  /** Addresses asked for, those of `blob:` and `data:` left out, which are the page itself. */
  readonly requests: readonly string[];
  readonly close: () => Promise<void>;
}

export interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly touch?: boolean;
  readonly now?: Date;
}

/** The page as it opens from a disk. */
export const fromDisk = (file = 'index.html'): string => pathToFileURL(`${inject('page')}/${file}`).href;

export async function openPage(
  address: string,
  { width = 1400, height = 900, touch = false, now }: Look = {},
): Promise<Opened> {
  browser ??= chromium.launch({ executablePath: inject('chromium') ?? '', args: ['--no-sandbox'] });
  const context = await (await browser).newContext({ viewport: { width, height }, hasTouch: touch });
  const page = await context.newPage();
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`${error.message} ${error.stack ?? ''}`));
  page.on('request', (request) => {
    if (!/^(blob|data):/.test(request.url())) requests.push(request.url());
  });
  if (now !== undefined) await page.clock.setFixedTime(now);
  await page.goto(address);
  await page.locator('main[data-area]').waitFor();
  return { page, context, complaints, requests, close: () => context.close() };
}

/** Opens a setup by dropping its text into the page as a file. */
export async function openSetupText(page: Page, name: string, text: string): Promise<void> {
  await page.goto(`${page.url().replace(/#.*$/, '')}#keep`);
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open files' }).click();
  await (await choosing).setFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) });
  await page.locator('main:not([data-area="keep"])').waitFor();
}

/** What a press of a button saves, as bytes, with the name of the file. */
export async function saved(page: Page, press: () => Promise<void>) {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

/** Serves the page in a folder of a host, with the policy as a header. */
export async function served(under = '/'): Promise<{ readonly address: string; readonly server: Server }> {
  const server = pageServer(`${inject('page')}/`, under);
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}${under}`, server };
}
