import { asFarAsItGoes, type Reach } from '../../sight/reach.ts';
import type { Asked } from '../asked/option.ts';
import { limitedQuantity, optionQuantity, optionRanges } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { ringSize } from '../asked/ring-size.ts';
import { cautionBlocks } from '../cautions.ts';
import { dataOf, tableOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import { ENTRY_LEFT_OUT, entersWind } from '../not-measured.ts';
import { reachData, reachNotes } from '../reach-words.ts';
import { inWhole, note, plotBlock, type Report, tableBlock, verdict, warning } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { whoseArrow } from '../whose-arrows.ts';
import { MISJUDGE_FIELDS } from './fields.ts';
import { type MisjudgeAsked, type MisjudgeFindings, misjudgeFindings } from './findings.ts';
import { hitPlot } from './plots.ts';
import type { question } from './question.ts';
import { columnWords, verdictWords } from './words.ts';

/** A row takes hundreds of flights: more of them would take longer than anybody waits. */
const MOST_ROWS = 500;

type AskedHere = Asked<typeof question.options>;

export function report([session]: Sessions, asked: AskedHere): Report {
  const { title, units } = session;
  const wanted = { ring: ringSize(asked.ring), spread: spreadOf(asked) };
  const { solved: found, ...reach } = asFarAsItGoes(
    session.calibration.rig,
    optionRanges(asked, MOST_ROWS),
    (ranges) => misjudgeFindings(session, { ...wanted, ranges }),
  );
  const table = tableOf(MISJUDGE_FIELDS, found.rows, units);
  return {
    title,
    blocks: [
      verdict(verdictWords(found, units)),
      ...headBlocks(session),
      tableBlock(table),
      ...inWhole(plotBlock(hitPlot(found, units))),
      note(columnWords(found.spread, whoseArrow(session), units)),
      ...reachNotes(reach, units).map(note),
      ...(entersWind(session.calibration.rig.conditions.arrow) ? [] : [warning(ENTRY_LEFT_OUT)]),
      ...cautionBlocks(session),
    ],
    rows: table,
    data: dataFor(session, found, reach),
    sheet: null,
  };
}

/** A guess worse than this would reach nearer than marks go. */
const WORST_GUESS = 0.3;

function spreadOf({ guess, cant, gusts }: AskedHere): MisjudgeAsked['spread'] {
  const share = optionQuantity('guess', guess, 'ratio');
  const lean = limitedQuantity('cant', cant, 'angle', '45 deg');
  const wind = limitedQuantity('gusts', gusts, 'speed', '100 mph');
  if (!(share >= 0 && share <= WORST_GUESS))
    throw new QuestionError(`{guess}: ${guess} is too large`, 'Write 0 % to 30 % of the range.');
  return { guess: share, cant: lean, windAcross: wind, windAlong: wind };
}

const dataFor = (
  { title, calibrated, calibration }: Session,
  { ring, spread, rows }: MisjudgeFindings,
  reach: Reach,
): object => ({
  title,
  calibrated,
  wind_entry_counted: entersWind(calibration.rig.conditions.arrow),
  ...reachData(reach),
  ring_m: ring,
  guess_sd_share: spread.guess,
  cant_sd_rad: spread.cant,
  wind_sd_mps: spread.windAcross,
  arrow_sd_per_range: spread.arrow,
  rows: dataOf(MISJUDGE_FIELDS, rows),
});
