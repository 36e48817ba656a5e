/** Exit codes: done; the run failed; the command line or the setup file is wrong. */
export const EXIT = { done: 0, failed: 1, refused: 2 } as const;
