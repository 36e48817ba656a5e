import { OUTLIER } from '../../calibration/disagreement.ts';
import { layOutCard } from '../../documents/page/card.ts';
import type { Drawing, PaperName } from '../../documents/page/drawing.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine, dateLine } from '../head.ts';
import type { Session } from '../session.ts';
import { unseenWords } from '../unseen-words.ts';
import { warnings } from '../warnings.ts';
import { changeLines, dayLines, wildLines } from './day-words.ts';
import { type FitFindings, farthestOf } from './findings.ts';
import { residualPlotWithBand, surenessPlot } from './plots.ts';
import { parameterTable, pencilTable, residualTable } from './tables.ts';
import { findingLines, nextLine, otherLines, tapeLine, tieLine, verdictLine } from './words.ts';

interface FitPaper {
  readonly page: PaperName;
  readonly day: string;
  /** Where the arrow falls short of the ranges asked for. */
  readonly short: readonly string[];
}

/** The report of a fit: the answer in words, the numbers behind it, and two pictures. */
export function fitSheet(session: Session, found: FitFindings, { page, day, short }: FitPaper): Drawing {
  const { units } = session;
  const shot = found.marks.length > 0;
  const sureness = surenessPlot(found, units);
  const lead = findingLines(session, found);
  return layOutCard(
    {
      title: `${session.title}: what the marks decide`,
      subtitle: [arrowLine(session), airLine(session), dateLine(day, session)],
      lead: [
        ...lead,
        ...changeLines(found, units),
        tapeLine(found, units),
        ...short,
        nextLine(session, found),
      ],
      tables: [
        { title: 'Before and after the marks', ...parameterTable(session, found) },
        ...(found.pencil.length === 0
          ? []
          : [{ title: 'The pencil lines beside the model', ...pencilTable(session, found) }]),
        ...(shot ? [{ title: 'The shot marks beside the model', ...residualTable(session, found) }] : []),
      ],
      notes: notes(session, found),
      plots: [
        ...(shot || found.pencil.length > 0
          ? [{ title: 'How far each group lies from the model', ...residualPlotWithBand(found, units) }]
          : []),
        ...(sureness === null ? [] : [{ title: 'How sure the mark of each range is', ...sureness }]),
      ],
      cautions: [
        ...warnings(session).filter((words) => !lead.includes(words)),
        ...unseenWords(session, farthestOf(found)),
        ...shotCautions(session).map(cautionOnPaper),
      ],
    },
    page,
  );
}

function notes(session: Session, found: FitFindings): readonly string[] {
  const { measurements } = found;
  return [
    verdictLine(found),
    ...(found.marks.length === 0
      ? []
      : [
          'On target: how high the group lies; ± of its middle. Studentised: in its own standard errors; beyond ' +
            `${OUTLIER} it does not belong with the rest.`,
        ]),
    ...(measurements === 0
      ? []
      : [
          `Sum of squared residuals, each over its error: ${session.calibration.chiSquared.toFixed(1)}, where ` +
            `about ${measurements} is expected.`,
        ]),
    tieLine(session, found),
    ...wildLines(found, session.units),
    ...otherLines(found, session.units),
    ...dayLines(found, session.units),
  ].filter((line) => line !== '');
}
