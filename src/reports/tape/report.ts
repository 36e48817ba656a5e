import type { Asked } from '../asked/option.ts';
import { positiveQuantity } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { leftOutData } from '../disagreement-data.ts';
import { dataOf, tableOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { isDraft, refuseContradiction } from '../refuse-contradiction.ts';
import { note, paragraph, type Report, warning } from '../report.ts';
import type { Sessions } from '../session.ts';
import { markWarnings, warnings } from '../warnings.ts';
import { askedRanges } from './asked-ranges.ts';
import { tickFields } from './fields.ts';
import { sheetFindings, tapeFindings } from './findings.ts';
import type { question } from './question.ts';
import { tapeSheet } from './sheet.ts';
import { lengthWords, PRINT_WORDS, shortNotes } from './words.ts';

/** Neighbours further apart than this are for other bows. */
const WIDEST_STEP = '20 fps';

export function report(
  [session]: Sessions,
  asked: Asked<typeof question.options>,
  { now, sheet }: Occasion,
): Report {
  const { title, calibrated, calibration, units } = session;
  refuseContradiction(session, asked.anyway);
  const step = positiveQuantity('step', asked.step, 'speed', WIDEST_STEP);
  const unit = asked.in === 'yards' ? 'yd' : 'm';
  const ranges = askedRanges(asked, unit);
  const tape = tapeFindings(session, ranges);
  const doubts = markWarnings(session, tape.last.range);
  const print = { unit, paper: asked.page, copies: asked.copies, day: now } as const;
  const draw = () =>
    tapeSheet(session, tape, sheetFindings(session, tape, ranges, { count: asked.neighbours, step }), print);
  const fields = tickFields(unit);
  return {
    title,
    blocks: [
      ...headBlocks(session),
      { kind: 'sheet', about: lengthWords(tape, unit) },
      ...doubts.map(warning),
      paragraph(PRINT_WORDS),
      ...shortNotes(tape, units).map(note),
      ...cautionBlocks(session),
    ],
    rows: tableOf(fields, tape.ticks, units),
    data: {
      title,
      calibrated,
      warnings: [...warnings(session), ...doubts],
      draft: isDraft(session),
      ...leftOutData(session),
      zero_range_m: calibration.rig.zeroRange,
      // A door that writes the sheet puts the names of its files here.
      files: [],
      ticks: dataOf(fields, tape.ticks),
    },
    sheet: sheet ? draw() : null,
  };
}
