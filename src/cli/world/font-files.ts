import { createRequire } from 'node:module';
import type { Io } from '../io.ts';

/** The typeface that every document embeds, found by the name of the package both from the sources and from the bundle. */
export function documentFonts(io: Io): { readonly font: Uint8Array; readonly boldFont: Uint8Array } {
  const { resolve } = createRequire(import.meta.url);
  return {
    font: io.readBytes(resolve('quillpath/fonts/sans-condensed.ttf')),
    boldFont: io.readBytes(resolve('quillpath/fonts/sans-condensed-bold.ttf')),
  };
}
