import type { Io } from '../../cli/io.ts';
import { layOutCard } from '../../documents/page/card.ts';
import type { Drawing } from '../../documents/page/drawing.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine, dateLine } from '../head.ts';
import { contactNote } from '../marks/words.ts';
import { isToldSpread } from '../told-spread.ts';
import { warnings } from '../warnings.ts';
import type { CardFindings } from './findings.ts';
import { pathPlot } from './path-plot.ts';
import { belowNoughtNote, cardCuts, cardTable, windWords } from './tables.ts';

/** The page to take along. */
export function cardSheet(io: Io, found: CardFindings, page: 'a4' | 'letter'): Drawing {
  const { session, rows, slopes, touching } = found;
  return layOutCard(
    {
      title: session.title,
      subtitle: [arrowLine(session), airLine(session), dateLine(io.now(), session)],
      tables: [
        { title: 'Marks', ...cardTable(found) },
        ...(slopes.length === 0
          ? []
          : [{ title: 'Uphill and downhill: take this off the range', ...cardCuts(found) }]),
      ],
      plots: [pathPlot(session, { from: rows[0]?.mark.range ?? 0, to: rows.at(-1)?.mark.range ?? 0 })],
      notes: notes(found),
      cautions: [
        ...warnings(session),
        ...(touching === null ? [] : [contactNote(touching, session.units)]),
        ...shotCautions(session).map(cautionOnPaper),
      ].filter((line) => line !== ''),
    },
    page,
  );
}

function notes(found: CardFindings): readonly string[] {
  const {
    session: { units, calibration },
    crosswind,
    rows,
  } = found;
  const isTied = rows.every(({ uncertainty }) => isToldSpread(uncertainty.onTargetSd));
  const zero = formatQuantity(calibration.rig.zeroRange, units.range, 0);
  const wind = windWords(crosswind, units);
  return [
    `Travel: of the pin below its place at ${zero}. ± on target: one standard uncertainty of the mark; your group adds to it. Highest: above the line of sight on the way.`,
    `Wind: ${wind} straight from the side moves the hit this far downwind. From 2, 4, 8 or 10 o'clock take 7/8 of it, from 1, 5, 7 or 11 half.`,
    'Cant: for each degree the top limb leans to one side, the arrow hits this far to that side.',
    'Slopes: uphill is +, range along the line of sight. "-": the pin would have to be above every mark, so set the highest.',
    belowNoughtNote(found),
    isTied
      ? 'Shoot a mark before you trust it.'
      : 'No mark ties the readings to the arrow yet: shoot one before you use them.',
  ].filter((line) => line !== '');
}
