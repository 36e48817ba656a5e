import { OUTLIER } from '../../calibration/diagnose.ts';
import type { Io } from '../../cli/io.ts';
import { layOutCard } from '../../documents/page/card.ts';
import type { Drawing } from '../../documents/page/drawing.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine, dateLine } from '../head.ts';
import { warnings } from '../warnings.ts';
import type { FitFindings } from './findings.ts';
import { residualPlotWithBand, surenessPlot } from './plots.ts';
import { parameterTable, residualTable } from './tables.ts';
import { correlationLine, findingLines, nextLine, otherLines, tapeLine, verdictLine } from './words.ts';

/** The report of a fit: the answer in words, the numbers behind it, and two pictures. */
export function fitSheet(io: Io, found: FitFindings, page: 'a4' | 'letter'): Drawing {
  const { session, marks } = found;
  const shot = marks.length > 0;
  const sureness = surenessPlot(found);
  return layOutCard(
    {
      title: `${session.title}: what the marks decide`,
      subtitle: [arrowLine(session), airLine(session), dateLine(io, session)],
      lead: [...findingLines(found), tapeLine(found), nextLine(found)],
      tables: [
        { title: 'Before and after the marks', ...parameterTable(found) },
        ...(shot ? [{ title: 'The shot marks beside the model', ...residualTable(found) }] : []),
      ],
      notes: notes(found),
      plots: [
        ...(shot
          ? [{ title: 'How far each group lies from the model', ...residualPlotWithBand(found) }]
          : []),
        ...(sureness === null ? [] : [{ title: 'How sure the mark of each range is', ...sureness }]),
      ],
      cautions: [...warnings(session), ...shotCautions(session).map(cautionOnPaper)],
    },
    page,
  );
}

function notes(found: FitFindings): readonly string[] {
  const { chiSquared, residuals } = found.session.calibration;
  return [
    verdictLine(found),
    ...(found.marks.length === 0
      ? []
      : [
          `On target: how high the group lies; ± of its middle. Studentised: in its own standard errors; beyond ${OUTLIER} it does not belong with the rest.`,
        ]),
    ...(residuals.length === 0
      ? []
      : [
          `Squares of all residuals over their errors: ${chiSquared.toFixed(1)}, where about ${residuals.length} is expected.`,
        ]),
    correlationLine(found),
    ...otherLines(found).split('\n'),
  ].filter((line) => line !== '');
}
