/**
 * Exit codes: done; the run failed; the command line or the setup file is wrong; ended by a Ctrl-C, as a shell reports it, by 128
 * and the signal's number.
 */
export const EXIT = { done: 0, failed: 1, refused: 2, interrupted: 130 } as const;
