import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { headLines } from '../head.ts';
import type { FitFindings } from './findings.ts';
import { residualPlot } from './plots.ts';
import { parameterTable, residualTable } from './tables.ts';
import { correlationLine, findingLines, nextLine, otherLines, tapeLine, verdictLine } from './words.ts';

/** The fit for a person at a terminal. */
export const fitText = (fit: FitFindings, io: Io): string =>
  paragraphs([
    findingLines(fit).join('\n'),
    tapeLine(fit),
    headLines(fit.session).join('\n'),
    fit.files.length === 0 ? '' : `Wrote ${fit.files.join(', ')}.`,
    `${renderTableText(parameterTable(fit)).trimEnd()}\n${verdictLine(fit)}`,
    correlationLine(fit),
    fit.marks.length === 0 ? '' : renderTableText(residualTable(fit)),
    fit.marks.length === 0 ? '' : plotText(residualPlot(fit), plotSize(io)),
    otherLines(fit),
    nextLine(fit),
  ]);
