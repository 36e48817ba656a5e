import { createRequire } from 'node:module';
import type { Io } from '../io.ts';

/** The typeface of every document, carried inside it; found by the package's own name from the sources and from the bundle alike. */
export function documentFonts(io: Io): { readonly font: Uint8Array; readonly boldFont: Uint8Array } {
  const { resolve } = createRequire(import.meta.url);
  return {
    font: io.readBytes(resolve('quillpath/fonts/sans-condensed.ttf')),
    boldFont: io.readBytes(resolve('quillpath/fonts/sans-condensed-bold.ttf')),
  };
}
