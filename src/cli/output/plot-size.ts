import type { TerminalSize } from '../../documents/plot/terminal-plot.ts';
import type { Io } from '../io.ts';

/** Plots in a file or a pipe are as wide as an ordinary terminal; on a screen they never outgrow it. */
const WIDTH = { least: 40, usual: 78 } as const;
const HEIGHT = 18;

export const plotSize = ({ columns }: Io): TerminalSize => ({
  width: Math.max(WIDTH.least, Math.min(columns ?? WIDTH.usual, WIDTH.usual)),
  height: HEIGHT,
});
