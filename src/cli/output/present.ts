import { renderTableCsv } from '../../documents/render/text.ts';
import type { Table } from '../../documents/table/table.ts';
import type { Io } from '../io.ts';
import { withoutControls } from './without-controls.ts';

/** What a command found, in each of the forms it may be asked for; only the one asked for is made. */
export interface Answer {
  /** For people: head, tables, plots, notes. */
  readonly text: () => string;
  /** One document, SI, units in the keys. */
  readonly json: () => object;
  /** The rows. */
  readonly table: () => Table;
}

export function present(
  io: Io,
  { json = false, csv = false }: { readonly json?: boolean; readonly csv?: boolean },
  answer: Answer,
): void {
  if (json) io.out(`${JSON.stringify(answer.json(), null, 2)}\n`);
  else if (csv) io.out(withoutControls(renderTableCsv(answer.table())));
  else io.out(withoutControls(answer.text()));
}

/** Paragraphs with one empty line between them and one line end after the last; empty ones are left out. */
export const paragraphs = (parts: readonly string[]): string =>
  `${parts
    .map((part) => part.trimEnd())
    .filter((part) => part !== '')
    .join('\n\n')}\n`;
