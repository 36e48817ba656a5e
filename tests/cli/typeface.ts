import { readFileSync } from 'node:fs';

/** The typeface of documents, from its files: what the build puts into the program. */
export const typeface = async () => ({
  font: readFileSync('src/documents/fonts/sans-condensed.ttf'),
  boldFont: readFileSync('src/documents/fonts/sans-condensed-bold.ttf'),
});
