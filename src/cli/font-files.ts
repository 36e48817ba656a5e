import { createRequire } from 'node:module';
import type { Io } from './io.ts';

/** The typeface of every document, carried inside it; from the package that holds the free DejaVu fonts. */
export function documentFonts(io: Io): { readonly font: Uint8Array; readonly boldFont: Uint8Array } {
  const { resolve } = createRequire(import.meta.url);
  return {
    font: io.readBytes(resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
    boldFont: io.readBytes(resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')),
  };
}
