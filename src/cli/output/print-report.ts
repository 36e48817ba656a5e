import { renderTableCsv } from '../../documents/render/text.ts';
import type { Report } from '../../reports/report.ts';
import type { Io } from '../io.ts';
import { reportText } from './report-text.ts';
import { escapedControls, withoutControls } from './without-controls.ts';

/** For a person in short unless all is asked for, or for programs. */
export interface Form {
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly all?: boolean;
}

/** Narrower than this nothing can be read; a file or a pipe is as wide as an ordinary terminal. */
const WIDTH = { least: 40, usual: 80 } as const;

const widthOf = ({ columns }: Io): number => Math.max(WIDTH.least, columns ?? WIDTH.usual);

/**
 * Print a report in the form asked for: for a person, as one JSON document, or as rows for a spreadsheet.
 *
 * @param files the names of the files written; null for a question that has no document
 */
export function printReport(
  io: Io,
  { json = false, csv = false, all = false }: Form,
  { blocks, rows, data }: Report,
  files: readonly string[] | null,
): void {
  const document = files === null ? data : { ...data, files };
  if (json) io.out(`${escapedControls(JSON.stringify(document, null, 2))}\n`);
  else if (csv) io.out(withoutControls(renderTableCsv(rows)));
  else
    io.out(
      withoutControls(
        reportText(blocks, { width: widthOf(io), reading: all ? 'whole' : 'short', files: files ?? [] }),
      ),
    );
}
