import { toSi } from '../../quantities/format.ts';
import { si } from '../../quantities/quantity.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { leftOutData } from '../disagreement-data.ts';
import { dataOf, tableOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import { note, type Report, tableBlock, warning } from '../report.ts';
import type { Sessions } from '../session.ts';
import { markWarnings, warnings } from '../warnings.ts';
import { MARK_DATA, markColumns } from './fields.ts';
import { marksFindings } from './findings.ts';
import type { question } from './question.ts';
import { columnWords, marksNotes } from './words.ts';

export function report([session]: Sessions, asked: Asked<typeof question.options>): Report {
  const { title, calibrated, units } = session;
  const { zeroRange } = session.calibration.rig;
  const whole = si<'m'>(toSi(1, units.range));
  const found = marksFindings(session, { ranges: optionRanges(asked), whole });
  const table = tableOf(markColumns(found.scale === 'known'), found.rows, units);
  const last = found.rows.at(-1);
  const doubts = last === undefined ? [] : markWarnings(session, last.mark.range);
  return {
    title,
    blocks: [
      ...headBlocks(session),
      ...doubts.map(warning),
      tableBlock(table),
      note(columnWords(zeroRange, units)),
      ...marksNotes(found, units).map(note),
      ...cautionBlocks(session),
    ],
    rows: table,
    data: {
      title,
      calibrated,
      warnings: [...warnings(session), ...doubts],
      ...leftOutData(session),
      zero_range_m: zeroRange,
      out_of_reach_m: found.beyond,
      rows: dataOf(MARK_DATA, found.rows),
    },
    sheet: null,
  };
}
