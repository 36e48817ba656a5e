import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { drawingFormat, writeDrawing } from '../../cli/output/write-drawing.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { formatQuantity, toSi } from '../../quantities/format.ts';
import { optionRanges } from '../asked/quantity.ts';
import { type FitFindings, fitFindings } from './findings.ts';
import { fitJson } from './json.ts';
import { residualTable } from './tables.ts';
import { fitText } from './text.ts';

export interface FitOptions extends AnswerOptions {
  readonly from: string;
  readonly to: string;
  readonly out?: string;
  readonly page: 'a4' | 'letter';
}

/** Candidates for the next range stand this far apart, in the range unit. */
const STEP = 5;

export async function runFit(io: Io, path: string, options: FitOptions): Promise<void> {
  if (options.out !== undefined) drawingFormat(options.out, 'report');
  const session = openNamedFile(io, path, options);
  const every = formatQuantity(toSi(STEP, session.units.range), session.units.range, 0);
  const fit = fitFindings(session, optionRanges({ ...options, every }));
  const files = options.out === undefined ? [] : await write(io, options.out, fit, options.page);
  const found = { ...fit, files };
  present(io, options, {
    text: () => fitText(found, io),
    json: () => fitJson(found),
    table: () => residualTable(found),
  });
}

async function write(
  io: Io,
  path: string,
  fit: FitFindings,
  page: 'a4' | 'letter',
): Promise<readonly string[]> {
  const { fitSheet } = await import('./sheet.ts');
  return writeDrawing(io, path, fitSheet(io, fit, page), fit.session.title);
}
