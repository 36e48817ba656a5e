import { symbolOf } from '../../quantities/format.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges } from '../asked/quantity.ts';
import { dataOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { type Block, inWhole, paragraph, plotBlock, type Report, tableBlock, verdict } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { MARK_FIELDS, OTHER_FIELDS, parameterFields } from './fields.ts';
import { type FitFindings, fitFindings } from './findings.ts';
import { residualPlot } from './plots.ts';
import type { question } from './question.ts';
import { fitSheet } from './sheet.ts';
import { parameterTable, residualTable } from './tables.ts';
import { dayLines, findingLines, nextLine, otherLines, tapeLine, tieLine, verdictLine } from './words.ts';

/** Candidates for the next range stand this far apart, in the range unit. */
const STEP = 5;

export function report(
  [session]: Sessions,
  { from, to, page }: Asked<typeof question.options>,
  { now, sheet }: Occasion,
): Report {
  const every = `${STEP} ${symbolOf(session.units.range)}`;
  const found = fitFindings(session, optionRanges({ from, to, every }));
  return {
    title: session.title,
    blocks: blocksOf(session, found),
    rows: residualTable(session, found),
    data: dataFor(session, found),
    sheet: sheet ? fitSheet(session, found, { page, now }) : null,
  };
}

const blocksOf = (session: Session, found: FitFindings): readonly Block[] => [
  verdict(findingLines(session, found).join('\n')),
  verdict(tapeLine(found, session.units)),
  ...headBlocks(session),
  { kind: 'sheet', about: '' },
  tableBlock(parameterTable(session, found), verdictLine(found)),
  paragraph(tieLine(session, found)),
  ...(found.marks.length === 0
    ? []
    : [tableBlock(residualTable(session, found)), ...inWhole(plotBlock(residualPlot(found, session.units)))]),
  paragraph(otherLines(found, session.units).join('\n')),
  paragraph(dayLines(found, session.units).join('\n')),
  paragraph(nextLine(found, session.units)),
];

function dataFor(session: Session, found: FitFindings): object {
  const { title, calibrated, calibration } = session;
  const { parameters, marks, others, symptoms, next, days, hidden } = found;
  return {
    title,
    calibrated,
    chi_squared: calibration.chiSquared,
    measurements: found.measurements,
    chance: calibration.chance,
    widening: calibration.widening,
    parameters: dataOf(parameterFields(session), parameters),
    correlations: calibration.correlations,
    residuals: dataOf(MARK_FIELDS, marks),
    others: dataOf(OTHER_FIELDS, others),
    findings: symptoms,
    next_range_m: next.range,
    rms_on_target_now_m: next.rmsNow,
    rms_on_target_after_m: next.rmsAfter,
    days: days.map(({ day, measurements, speedOffset, sd }) => ({
      date: day,
      measurements,
      speed_offset_mps: speedOffset,
      sd_mps: sd,
    })),
    hidden_by_evenings:
      hidden === null
        ? null
        : { range_m: hidden.range, on_target_m: hidden.shift, speed_difference_mps: hidden.apart },
  };
}
