import { renderTableText } from '../../documents/render/text.ts';
import { plotText } from '../../documents/terminal-plot.ts';
import type { Io } from '../io.ts';
import { plotSize } from '../plot-size.ts';
import { paragraphs } from '../present.ts';
import { headLines } from './describe.ts';
import type { FitFindings } from './fit-findings.ts';
import { residualPlot } from './fit-plots.ts';
import { parameterTable, residualTable } from './fit-tables.ts';
import { correlationLine, findingLines, nextLine, otherLines, tapeLine, verdictLine } from './fit-words.ts';

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
