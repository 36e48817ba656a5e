import { fromSi } from '../../quantities/format.ts';
import { type ShotRow, straightLaunch } from '../../sight/shot.ts';
import type { Asked } from '../asked/option.ts';
import { flownRange, optionRanges } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { dataOf, tableOf } from '../field.ts';
import { flownRanges } from '../flown-ranges.ts';
import { headBlocks } from '../head.ts';
import { inShort, inWhole, note, paragraph, plotBlock, type Report, tableBlock, verdict } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { shortRows } from '../short-rows.ts';
import { SHOT_FIELDS } from './fields.ts';
import { type FlyAsked, flyFindings } from './findings.ts';
import { heightPlot } from './plots.ts';
import type { question } from './question.ts';
import { columnWords, launchWords, missingRows, verdictWords } from './words.ts';

type AskedHere = Asked<typeof question.options>;

export function report([session]: Sessions, asked: AskedHere): Report {
  const { title, calibrated, units } = session;
  const found = flyFindings(session, shotAsked(session, asked));
  const table = tableOf(SHOT_FIELDS, found.rows, units);
  const inUnit = ({ range }: ShotRow): number => fromSi(range, units.range);
  const missing = missingRows(found, units);
  return {
    title,
    blocks: [
      verdict(verdictWords(found, units)),
      ...headBlocks(session),
      ...inWhole(paragraph(launchWords(found, units))),
      ...inShort(tableBlock(tableOf(SHOT_FIELDS, shortRows(found.rows, inUnit), units))),
      ...inWhole(tableBlock(table)),
      ...inWhole(plotBlock(heightPlot(found, units))),
      ...(missing.length === 0 ? [] : [note(missing.join('\n'))]),
      note(columnWords(found).join('\n')),
      ...cautionBlocks(session),
    ],
    rows: table,
    data: {
      title,
      calibrated,
      aim_range_m: found.aim,
      launch_angle_rad: found.launchAngle,
      rows: dataOf(SHOT_FIELDS, found.rows),
    },
    sheet: null,
  };
}

function shotAsked(
  { calibration: { rig }, units }: Session,
  { aim: written, to, every }: AskedHere,
): FlyAsked {
  const aim = written === null ? rig.zeroRange : flownRange('aim', written);
  const ranges = optionRanges({ to, every });
  const launch = straightLaunch(rig, written === null ? null : aim);
  return { aim, launch, ranges, free: flownRanges(ranges, launch, units) };
}
