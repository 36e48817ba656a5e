import { symbolOf, toSi } from '../../quantities/format.ts';
import { si } from '../../quantities/quantity.ts';
import { asFarAsItGoes } from '../../sight/reach.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges } from '../asked/quantity.ts';
import { contradictionData, leftOutData, unseenData } from '../disagreement-data.ts';
import { disagreementWords } from '../disagreement-words.ts';
import { dataOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { LEFT_OUT, reachData, reachNotes } from '../reach-words.ts';
import { type Block, inWhole, paragraph, plotBlock, type Report, tableBlock, verdict } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { unseenWords } from '../unseen-words.ts';
import { changeLines, dayLines, wildLines } from './day-words.ts';
import { MARK_FIELDS, OTHER_FIELDS, PENCIL_FIELDS, parameterFields } from './fields.ts';
import { type FitFindings, farthestOf, fitFindings } from './findings.ts';
import { pinData, pinLines } from './pin-words.ts';
import { residualPlot } from './plots.ts';
import type { question } from './question.ts';
import { fitSheet } from './sheet.ts';
import { parameterTable, pencilTable, residualTable } from './tables.ts';
import { findingLines, nextLine, otherLines, tapeLine, tieLine, verdictLine } from './words.ts';

/** Candidates for the next range stand this far apart, in the range unit. */
const STEP = 5;

export function report(
  [session]: Sessions,
  { from, to, page }: Asked<typeof question.options>,
  { day, sheet }: Occasion,
): Report {
  const { units, calibration } = session;
  const every = `${STEP} ${symbolOf(units.range)}`;
  const { solved: found, ...reach } = asFarAsItGoes(
    calibration.rig,
    optionRanges({ from, to, every }),
    (ranges) => fitFindings(session, ranges, si(toSi(1, units.range))),
  );
  const short = reachNotes(reach, units, 'of this', LEFT_OUT);
  return {
    title: session.title,
    blocks: blocksOf(session, found, short),
    rows: residualTable(session, found),
    data: { ...dataFor(session, found), ...reachData(reach) },
    sheet: sheet ? fitSheet(session, found, { page, day, short }) : null,
  };
}

/** What contradicts what stands first already. */
const isSaid = (session: Session, text: string): boolean => text === disagreementWords(session);

const blocksOf = (session: Session, found: FitFindings, short: readonly string[]): readonly Block[] => [
  verdict([...changeLines(found, session.units), ...findingLines(session, found)].join('\n')),
  verdict([tapeLine(found, session.units), ...short].join(' ')),
  ...headBlocks(session).filter((block) => block.kind !== 'warning' || !isSaid(session, block.text)),
  { kind: 'sheet', about: '' },
  tableBlock(parameterTable(session, found), verdictLine(found)),
  paragraph(tieLine(session, found)),
  ...(found.marks.length === 0 ? [] : [tableBlock(residualTable(session, found))]),
  ...(found.pencil.length === 0 ? [] : [tableBlock(pencilTable(session, found))]),
  ...(found.marks.length + found.pencil.length === 0
    ? []
    : inWhole(plotBlock(residualPlot(found, session.units)))),
  paragraph(wildLines(found, session.units).join('\n')),
  paragraph(otherLines(found, session.units).join('\n')),
  paragraph(pinLines(session).join('\n')),
  paragraph(dayLines(found, session.units).join('\n')),
  paragraph(unseenWords(session, farthestOf(found)).join('\n')),
  paragraph(nextLine(session, found)),
];

function dataFor(session: Session, found: FitFindings): object {
  const { title, calibrated, calibration } = session;
  const { parameters, marks, pencil, others, symptoms, next, days, change, wild, hidden } = found;
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
    pencil_lines: dataOf(PENCIL_FIELDS, pencil),
    wild_arrows: wild.map(({ range, date, arrow, hit, chance }) => ({
      range_m: range,
      date,
      arrow,
      right_m: hit.right,
      high_m: hit.high,
      chance,
    })),
    others: dataOf(OTHER_FIELDS, others),
    pins: pinData(session),
    findings: symptoms,
    contradiction: contradictionData(session),
    ...leftOutData(session),
    unseen_slip: unseenData(session, farthestOf(found)),
    next_range_m: next.range,
    rms_on_target_now_m: next.rmsNow,
    rms_on_target_after_m: next.rmsAfter,
    days: days.map(({ day, measurements, speedOffset, sd, temperature, density, build }) => ({
      date: day,
      measurements,
      speed_offset_mps: speedOffset,
      sd_mps: sd,
      temperature_K: temperature,
      density_kgpm3: density,
      build,
    })),
    days_agree_chance: found.daysAgree,
    bow_change:
      change === null
        ? null
        : {
            since: change.since,
            cause: change.cause,
            size: change.size,
            sd: change.sd,
            unit: CHANGE_UNITS[change.cause],
            chance: change.chance,
            chance_of_any: change.chanceOfAny,
          },
    hidden_by_evenings:
      hidden === null
        ? null
        : { range_m: hidden.range, on_target_m: hidden.shift, speed_difference_mps: hidden.apart },
  };
}

/** SI units of what a bow changes by. */
const CHANGE_UNITS = { launch_speed: 'm/s', peep_or_sight: 'm', drag: '1' } as const;
