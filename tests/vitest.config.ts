import { defineConfig } from 'vitest/config';

/**
 * What each folder claims: DEVELOPERS.md. A project runs alone with
 * `npx vitest run --config tests/vitest.config.ts --project unit`.
 */
const projects = ['unit', 'reference', 'property', 'golden', 'fuzz', 'cli', 'architecture', 'page'];

/** What is built once before the tests of a project. */
const setUp: Readonly<Record<string, string[]>> = {
  cli: ['tests/cli/build-once.ts'],
  page: ['tests/page/build-page-once.ts'],
};

export default defineConfig({
  test: {
    // Every core works: left to itself, one stays idle, and on two that is half.
    maxWorkers: '100%',
    projects: projects.map((name) => ({
      root: '.',
      test: {
        name,
        include: [`tests/${name}/**/*.test.ts`],
        globalSetup: setUp[name] ?? [],
        testTimeout: 60_000,
        hookTimeout: 60_000,
        // No test changes a module, so all files of a process share what they import; a browser belongs to its file.
        isolate: name === 'page',
        // Processes and not threads: reading a deeply nested setup file needs a process's stack.
        pool: 'forks',
      },
    })),
  },
});
