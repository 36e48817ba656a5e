import type { TerminalSize } from '../../documents/plot/terminal-plot.ts';

/** Wider plots do not tell more; narrower ones cannot be read. */
const WIDTH = { least: 40, most: 78 } as const;
const HEIGHT = 18;

/** @param columns of the terminal */
export const plotSize = (columns: number): TerminalSize => ({
  width: Math.max(WIDTH.least, Math.min(columns, WIDTH.most)),
  height: HEIGHT,
});
