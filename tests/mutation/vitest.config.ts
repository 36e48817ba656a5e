import process from 'node:process';
import { defineConfig } from 'vitest/config';

/** The tests that judge the mutants of a room: mutate.mjs names their folders and files. */
export default defineConfig({
  test: {
    include: (process.env['MUTATION_TESTS'] ?? '').split(','),
    testTimeout: 120_000,
    // The tester starts a new thread for each mutant; within it the files of tests may share what they import.
    isolate: false,
  },
});
