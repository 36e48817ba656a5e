import type { Asked } from '../asked/option.ts';
import { positiveQuantity } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { leftOutData } from '../disagreement-data.ts';
import { dataOf, tableOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { isDraft, refuseContradiction } from '../refuse-contradiction.ts';
import { note, paragraph, type Report, verdict, warning } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { markWarnings, warnings } from '../warnings.ts';
import { askedRanges } from './asked-ranges.ts';
import { tickFields } from './fields.ts';
import { sheetFindings, surenessOf, tapeFindings } from './findings.ts';
import type { question } from './question.ts';
import { type NamedTape, tapeSheet } from './sheet.ts';
import { lengthWords, PRINT_WORDS, shortNotes, verdictWords } from './words.ts';

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
  const named = (one: Session, name: string | null, count: number): NamedTape => {
    const tape = tapeFindings(one, ranges);
    return { name, session: one, tape, sheet: sheetFindings(one, tape, ranges, { count, step }) };
  };
  const tapes = [named(session, null, sheet ? asked.neighbours : 0)] as const;
  const [{ tape, sheet: found }] = tapes;
  const sureness = surenessOf(session, tape);
  const doubts = markWarnings(session, tape.last.range);
  const fields = tickFields(unit);
  return {
    title,
    blocks: [
      verdict(verdictWords(sureness, found.provenTo, units, unit)),
      ...headBlocks(session),
      { kind: 'sheet', about: lengthWords(tape, unit) },
      ...doubts.map(warning),
      paragraph(PRINT_WORDS),
      ...shortNotes(tape, units, unit).map(note),
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
      form: {
        width_m: tape.form.width,
        length_m: tape.form.length,
        ticks: tape.form.ticks,
        far_at: tape.form.farAt,
        numbers: tape.form.numbers,
        travel_ratio: tape.form.travelRatio,
      },
      ends_before_m: {
        contact: tape.endsBefore,
        reach: tape.beyond,
        slider: tape.sliderEndsBefore,
        place: tape.placeEndsBefore,
      },
      proven_to_m: found.provenTo,
    },
    sheet: sheet
      ? tapeSheet(tapes, {
          unit,
          paper: asked.page,
          copies: asked.copies,
          join: asked.join,
          day: now,
          step,
          sureness,
        })
      : null,
  };
}
