import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The folder of the program as a user runs it, built once for the whole run. */
    dist: string;
  }
}

/** Builds the program before the first test of the project; the tests that need a process of their own run it from there. */
export function setup(project: TestProject): void {
  const targets = ['cli', 'library', 'man', 'bill'];
  const { status } = spawnSync(process.execPath, ['build.mjs', ...targets], { stdio: 'inherit' });
  if (status !== 0) throw new Error('The program could not be built: see the messages above.');
  project.provide('dist', resolve('dist'));
}
