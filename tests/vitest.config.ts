import { defineConfig } from 'vitest/config';

/** What each folder claims: DEVELOPERS.md. A project runs alone with `npx vitest run --config tests/vitest.config.ts --project unit`. */
const projects = ['unit', 'reference', 'property', 'golden', 'cli', 'architecture'];

export default defineConfig({
  test: {
    projects: projects.map((name) => ({
      root: '.',
      test: {
        name,
        include: [`tests/${name}/**/*.test.ts`],
        testTimeout: 60_000,
        isolate: false,
        pool: 'forks',
      },
    })),
  },
});
