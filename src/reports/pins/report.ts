import type { Metres } from '../../quantities/quantity.ts';
import type { Asked } from '../asked/option.ts';
import { flownRange, optionQuantity, positiveQuantity } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { cautionBlocks } from '../cautions.ts';
import { dataOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { note, type Report, tableBlock, verdict } from '../report.ts';
import type { Sessions } from '../session.ts';
import { warnings } from '../warnings.ts';
import { BETWEEN_FIELDS, pinFields } from './fields.ts';
import { pinsFindings } from './findings.ts';
import type { question } from './question.ts';
import { pinsSheet } from './sheet.ts';
import { betweenTable, pinTable, settingsTable } from './tables.ts';
import { PINS_NOTE, STANDING_NOTE, verdictWords } from './words.ts';

/** Wider rings, and longer ways, are slips of the pen. */
const LARGEST_RING = '6 ft';
const FARTHEST = '150 yd';
/** A smaller one gives more rows than anybody reads. */
const SMALLEST_STEP = '0.1 yd';

/** @throws QuestionError for a step of no length, and of one that nobody means */
function stepBetween(every: string): Metres {
  const step = positiveQuantity('every', every, 'length', FARTHEST);
  if (step >= optionQuantity('every', SMALLEST_STEP, 'length')) return step;
  throw new QuestionError(
    `{every}: ${every} is too small a step to be right`,
    `It takes at least ${SMALLEST_STEP}.`,
  );
}

export function report(
  [session]: Sessions,
  asked: Asked<typeof question.options>,
  { day, sheet }: Occasion,
): Report {
  const { title, calibrated, units, calibration } = session;
  const found = pinsFindings(session, {
    set: asked.set,
    ring: positiveQuantity('ring', asked.ring, 'length', LARGEST_RING),
    every: stepBetween(asked.every),
    beyond: positiveQuantity('beyond', asked.beyond, 'length', FARTHEST),
    to: flownRange('to', asked.to),
  });
  const stands = calibration.rig.zeroedWith !== null;
  return {
    title,
    blocks: [
      verdict(verdictWords(found, units)),
      ...headBlocks(session),
      { kind: 'sheet', about: 'the pins at true size' },
      tableBlock(pinTable(found, units), PINS_NOTE),
      ...(found.between.length === 0 ? [] : [tableBlock(betweenTable(found, units))]),
      ...(found.settings.length === 0 ? [] : [tableBlock(settingsTable(found, units))]),
      ...(stands ? [note(STANDING_NOTE)] : []),
      ...cautionBlocks(session),
    ],
    rows: pinTable(found, units),
    data: {
      title,
      calibrated,
      warnings: warnings(session),
      files: [],
      pins: dataOf(pinFields(found.ring), found.pins),
      between: dataOf(BETWEEN_FIELDS, found.between),
      settings: found.settings.map(({ top, ranges }) => ({ top_range_m: top, ranges_m: ranges })),
    },
    sheet: sheet ? pinsSheet(session, found, { paper: asked.page, day }) : null,
  };
}
