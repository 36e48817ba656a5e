import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import process from 'node:process';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The folder of the page as a host serves it, built once for the whole run. */
    page: string;
    /** The browser that the page is tried in; null on a machine without one. */
    chromium: string | null;
  }
}

/** Where Debian and its kin put the browser. */
const KNOWN = ['/usr/bin/chromium', '/usr/bin/chromium-browser'] as const;

/** Builds the page before the first test of the project, and looks for a browser to try it in. */
export function setup(project: TestProject): void {
  const { status } = spawnSync(process.execPath, ['build.mjs', 'page'], { stdio: 'inherit' });
  if (status !== 0) throw new Error('The page could not be built: see the messages above.');
  const chromium = KNOWN.find((path) => existsSync(path)) ?? null;
  if (chromium === null)
    process.stderr.write(
      'Not run, as there is no Chromium (apt-get install chromium): the page in a browser - same answers as the command line, ' +
        'the first minutes, a day at the range, from a disk, offline, by keyboard, contrast and labels (tests/page).\n',
    );
  project.provide('page', resolve('dist/page'));
  project.provide('chromium', chromium);
}
