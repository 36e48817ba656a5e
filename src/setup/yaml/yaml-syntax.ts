import { type Document, visit, type YAMLParseError } from 'yaml';
import { inOwnWords, isOpenQuotation, type Words } from './yaml-errors.ts';

/** The faults of the text, each once, with the words for it. */
export const syntaxFaults = (document: Document): readonly { offset: number; words: Words }[] =>
  firstOfEachPlace(document).map(({ error, offset }) => ({ offset, words: inOwnWords(error) }));

/** One fault often has two errors at one place; the one about lines says more than the one about colons. */
function firstOfEachPlace(document: Document): readonly { error: YAMLParseError; offset: number }[] {
  const byPlace = new Map<number, YAMLParseError>();
  for (const error of document.errors) {
    const offset = isOpenQuotation(error) ? startOfLastQuotation(document) : error.pos[0];
    if (!byPlace.has(offset) || error.code === 'MULTILINE_IMPLICIT_KEY') byPlace.set(offset, error);
  }
  return [...byPlace].map(([offset, error]) => ({ error, offset }));
}

/** A quotation that is not closed takes in the rest of the file, so it is the last one. */
function startOfLastQuotation(document: Document): number {
  let start = 0;
  visit(document, {
    Scalar: (_, { type, range }) => {
      if (type === 'QUOTE_DOUBLE' || type === 'QUOTE_SINGLE') start = range?.[0] ?? start;
    },
  });
  return start;
}
