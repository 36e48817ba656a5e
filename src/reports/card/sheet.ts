import { layOutCard } from '../../documents/page/card.ts';
import { asDraft } from '../../documents/page/draft.ts';
import type { Drawing, PaperName } from '../../documents/page/drawing.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine, dateLine } from '../head.ts';
import { isDraft } from '../refuse-contradiction.ts';
import type { Session } from '../session.ts';
import { warnings } from '../warnings.ts';
import type { CardFindings } from './findings.ts';
import type { MarkPath } from './paths.ts';
import { pathPlot } from './plots.ts';
import { cardCuts, cardTable } from './tables.ts';
import { contactNotes, pageNotes } from './words.ts';

/** The page to take along. */
export function cardSheet(
  session: Session,
  found: CardFindings,
  { doubts, paths }: { readonly doubts: readonly string[]; readonly paths: readonly MarkPath[] },
  { page, day }: { readonly page: PaperName; readonly day: string },
): Drawing {
  const { units, calibration } = session;
  const card = layOutCard(
    {
      title: session.title,
      subtitle: [arrowLine(session), airLine(session), dateLine(day, session)],
      tables: [
        { title: 'Marks', ...cardTable(found, units) },
        ...(found.slopes.length === 0
          ? []
          : [{ title: 'Uphill and downhill: take this off the range', ...cardCuts(found, units) }]),
      ],
      plots: [pathPlot(paths, units)],
      notes: pageNotes(found, calibration.rig.zeroRange, units),
      cautions: [
        ...warnings(session),
        ...doubts,
        ...contactNotes(found, units),
        ...shotCautions(session).map(cautionOnPaper),
      ],
    },
    page,
  );
  return isDraft(session) ? asDraft(card) : card;
}
