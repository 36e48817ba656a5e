import type { Drawing } from '../documents/page/drawing.ts';
import type { Plot } from '../documents/plot/plot-data.ts';
import type { Table } from '../documents/table/table.ts';

/** Where somebody or something could come to harm. */
export interface Caution {
  /** Before the text; empty for what is only to be borne in mind. */
  readonly label: string;
  readonly text: string;
  /** The same on one line, for a screen. */
  readonly short?: string;
}

/** One thing in a report, in the order in which a person reads it. Each door shows it in its own way. */
export type Block = Content & {
  /** The reading that alone holds it: the short one, which fits a screen, or the whole one. Both do without. */
  readonly only?: Reading;
};

/** The two readings of a report. */
export type Reading = 'short' | 'whole';

type Content =
  /** The answer to the question, in a sentence or two; the first block wherever a question has one. */
  | { readonly kind: 'verdict'; readonly text: string }
  /** Which bow and arrow, in what air, and what the numbers rest on: a line each, and on one line where it must be short. */
  | { readonly kind: 'head'; readonly lines: readonly string[]; readonly short?: string }
  /** What makes every number of the report doubtful, or the arrow itself. */
  | { readonly kind: 'warning'; readonly text: string }
  /** Sentences; a line break within is meant. */
  | { readonly kind: 'paragraph'; readonly text: string }
  /** What a column means, or what was assumed. */
  | { readonly kind: 'note'; readonly text: string }
  /** Where somebody or something could come to harm, and what to bear in mind. */
  | ({ readonly kind: 'caution' } & Caution)
  /** A table, with a line that belongs right under it. */
  | { readonly kind: 'table'; readonly table: Table; readonly note?: string }
  | { readonly kind: 'plot'; readonly plot: Plot }
  /** The place of the document: the picture itself on a page, the names of the files in a terminal, with what is in them. */
  | { readonly kind: 'sheet'; readonly about: string };

/** What a question found, as plain data: it can be shown by any door and sent from thread to thread. */
export interface Report {
  /** A name for the document. */
  readonly title: string;
  readonly blocks: readonly Block[];
  /** The rows for a spreadsheet. */
  readonly rows: Table;
  /** One document for programs: SI, units in the keys. */
  readonly data: object;
  /** The document on paper; null when there is none or it was not asked for. */
  readonly sheet: Drawing | null;
}

export const verdict = (text: string): Block => ({ kind: 'verdict', text });
export const warning = (text: string): Block => ({ kind: 'warning', text });
export const paragraph = (text: string): Block => ({ kind: 'paragraph', text });
export const note = (text: string): Block => ({ kind: 'note', text });
export const tableBlock = (table: Table, under?: string): Block =>
  under === undefined ? { kind: 'table', table } : { kind: 'table', table, note: under };
export const plotBlock = (plot: Plot): Block => ({ kind: 'plot', plot });

/** Blocks for who asks for everything. */
export const inWhole = (...blocks: readonly Block[]): readonly Block[] =>
  blocks.map((block) => ({ ...block, only: 'whole' }));
/** Blocks that stand for longer ones of the whole report. */
export const inShort = (...blocks: readonly Block[]): readonly Block[] =>
  blocks.map((block) => ({ ...block, only: 'short' }));

/** A caution with its label: for a terminal. */
export const cautionText = ({ label, text }: Caution): string => (label === '' ? text : `${label}: ${text}`);
