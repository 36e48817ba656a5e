import { renderTableCsv } from '../../documents/render/text.ts';
import type { Report } from '../../reports/report.ts';
import type { Io } from '../io.ts';
import { plotSize } from './plot-size.ts';
import { reportText } from './report-text.ts';
import { withoutControls } from './without-controls.ts';

/**
 * Print a report in the form asked for: for a person, as one JSON document, or as rows for a spreadsheet.
 *
 * @param files the names of the files written; null for a question that has no document
 */
export function printReport(
  io: Io,
  { json = false, csv = false }: { readonly json?: boolean; readonly csv?: boolean },
  { blocks, rows, data }: Report,
  files: readonly string[] | null,
): void {
  const document = files === null ? data : { ...data, files };
  if (json) io.out(`${JSON.stringify(document, null, 2)}\n`);
  else if (csv) io.out(withoutControls(renderTableCsv(rows)));
  else io.out(withoutControls(reportText(blocks, plotSize(io), files ?? [])));
}
