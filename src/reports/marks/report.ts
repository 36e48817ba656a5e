import { fromSi, toSi } from '../../quantities/format.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { leftOutData } from '../disagreement-data.ts';
import { dataOf, tableOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { reachData } from '../reach-words.ts';
import { inShort, inWhole, note, type Report, tableBlock, verdict, warning } from '../report.ts';
import type { Sessions } from '../session.ts';
import { shortRanges } from '../short-ranges.ts';
import { shortRows } from '../short-rows.ts';
import { staleMarksIn } from '../stale-warning.ts';
import { surenessWords } from '../sureness-words.ts';
import { markWarnings, warnings } from '../warnings.ts';
import { MARK_DATA, markColumns, shortColumns } from './fields.ts';
import { marksFindings, sureOf } from './findings.ts';
import type { question } from './question.ts';
import { columnWords, marksNotes, shortColumnWords } from './words.ts';

export function report(
  [session]: Sessions,
  asked: Asked<typeof question.options>,
  { reading }: Pick<Occasion, 'reading'>,
): Report {
  const { title, calibrated, units } = session;
  const { zeroRange } = session.calibration.rig;
  const whole = si<'m'>(toSi(1, units.range));
  const ranges = optionRanges(asked);
  const needed = (reached: readonly Metres[]) =>
    reading === 'whole' ? reached : shortRanges(reached, units);
  const found = marksFindings(session, { ranges, whole, needed });
  const isScaleKnown = found.scale === 'known';
  const reached = ranges.filter((range) => found.beyond === null || range < found.beyond);
  const onScreen = new Set(shortRows(reached, (range) => fromSi(range, units.range)));
  const all = reading === 'whole' ? found.rows : [];
  const table = tableOf(markColumns(isScaleKnown), all, units);
  const last = found.rows.at(-1);
  const doubts = last === undefined ? [] : markWarnings(session, last.mark.range, sureOf(found));
  return {
    title,
    blocks: [
      verdict(surenessWords(sureOf(found), units, { calibrated, from: zeroRange })),
      ...headBlocks(session),
      ...doubts.map(warning),
      ...inShort(
        tableBlock(
          tableOf(
            shortColumns(isScaleKnown),
            found.rows.filter(({ mark }) => onScreen.has(mark.range)),
            units,
          ),
        ),
        note(shortColumnWords(zeroRange, units)),
      ),
      ...inWhole(tableBlock(table), note(columnWords(zeroRange, units))),
      ...marksNotes(found, units).map(note),
      ...cautionBlocks(session),
    ],
    rows: table,
    data: {
      title,
      calibrated,
      warnings: [...warnings(session), ...doubts],
      ...leftOutData(session),
      stale_marks_m: staleMarksIn(session)?.ranges ?? [],
      zero_range_m: zeroRange,
      ...reachData(found),
      rows: dataOf(MARK_DATA, all),
    },
    sheet: null,
  };
}
