import { at } from '../../numerics/at.ts';
import { fromSi, toSi } from '../../quantities/format.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { asFarAsItGoes, type Reach } from '../../sight/reach.ts';
import { anglesBothWays } from '../asked/angles.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges, windSpeed } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { leftOutData } from '../disagreement-data.ts';
import { dataOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import { ENTRY_LEFT_OUT, entersWind } from '../not-measured.ts';
import type { Occasion } from '../occasion.ts';
import { reachData, reachNotes } from '../reach-words.ts';
import { isDraft, refuseContradiction } from '../refuse-contradiction.ts';
import {
  type Block,
  inShort,
  inWhole,
  note,
  paragraph,
  type Report,
  tableBlock,
  verdict,
  warning,
} from '../report.ts';
import { roundRanges, type Stretch } from '../round-ranges.ts';
import type { Session, Sessions } from '../session.ts';
import { shortRows } from '../short-rows.ts';
import { surenessWords } from '../sureness-words.ts';
import { markWarnings, warnings } from '../warnings.ts';
import { CUT_FIELDS, cardFields } from './fields.ts';
import { type CardFindings, type CardRow, cardFindings, farthestOf } from './findings.ts';
import { markPaths } from './paths.ts';
import { pocketSheet } from './pocket.ts';
import type { question } from './question.ts';
import { cardSheet } from './sheet.ts';
import { cardCuts, cardTable } from './tables.ts';
import { belowZeroNotes, contactNotes } from './words.ts';

/** Slopes are told for this many round ranges at most: between them a cut changes by less than a pin can be set to. */
const SLOPE_RANGES = 9;
/** Rows on a screen. */
const SHORT_ROWS = 20;
/** Paths are told apart by their dashes; more would not be. Of one more the nearest is left out: it is the flattest. */
const MOST_PATHS = 4;

export function report(
  [session]: Sessions,
  asked: Asked<typeof question.options>,
  { day, sheet }: Occasion,
): Report {
  const { title, units } = session;
  refuseContradiction(session, asked.anyway);
  const crosswind = windSpeed('crosswind', asked.crosswind);
  const slopes = anglesBothWays(
    { option: 'steepest', text: asked.steepest },
    { option: 'angleStep', text: asked.angleStep },
  ).filter((slope) => slope !== 0);
  const whole = si<'m'>(toSi(1, units.range));
  const { solved: found, ...reach } = asFarAsItGoes(session.calibration.rig, optionRanges(asked), (ranges) =>
    cardFindings(session, {
      ranges,
      crosswind,
      slopes,
      slopeRanges: asked.pocket ? ranges : roundRanges(stretchOf(ranges), units, SLOPE_RANGES),
      whole,
    }),
  );
  const doubts = markWarnings(
    session,
    farthestOf(found),
    found.rows.map(({ uncertainty }) => uncertainty),
  );
  const draw = () => {
    if (asked.pocket) return pocketSheet(session, found, { page: asked.page, day });
    const pathRanges = roundRanges(
      stretchOf(found.rows.map(({ mark }) => mark.range)),
      units,
      MOST_PATHS + 1,
    ).slice(-MOST_PATHS);
    return cardSheet(
      session,
      found,
      { doubts, paths: markPaths(session, pathRanges) },
      { page: asked.page, day },
    );
  };
  return {
    title,
    blocks: blocksOf(session, found, { doubts, reach }),
    rows: cardTable(found, units),
    data: dataFor(session, found, { doubts, reach }),
    sheet: sheet ? draw() : null,
  };
}

const stretchOf = (ranges: readonly Metres[]): Stretch => ({
  from: at(ranges, 0),
  to: at(ranges, ranges.length - 1),
});

/** What is told with a card beside its rows. */
interface Beside {
  readonly doubts: readonly string[];
  readonly reach: Reach;
}

function blocksOf(session: Session, found: CardFindings, { doubts, reach }: Beside): readonly Block[] {
  const { units } = session;
  const inUnit = ({ mark }: CardRow): number => fromSi(mark.range, units.range);
  return [
    verdict(
      surenessWords(
        found.rows.map(({ uncertainty }) => uncertainty),
        units,
        {
          calibrated: session.calibrated,
          from: session.calibration.rig.zeroRange,
        },
      ),
    ),
    { kind: 'sheet', about: '' },
    ...headBlocks(session),
    ...doubts.map(warning),
    ...inShort(tableBlock(cardTable({ ...found, rows: shortRows(found.rows, inUnit, SHORT_ROWS) }, units))),
    ...inWhole(tableBlock(cardTable(found, units))),
    ...(found.slopes.length === 0
      ? []
      : inWhole(
          paragraph('Uphill (+) and downhill (-), take this off the range:'),
          tableBlock(cardCuts(found, units)),
        )),
    ...belowZeroNotes(found, units).map(note),
    ...reachNotes(reach, units).map(note),
    ...inWhole(...reachNotes(found.slopesReach, units, 'of these slopes').map(note)),
    ...contactNotes(found, units).map(note),
    ...(entersWind(session.calibration.rig.conditions.arrow) ? [] : [warning(`wind. ${ENTRY_LEFT_OUT}`)]),
    ...cautionBlocks(session),
  ];
}

const dataFor = (session: Session, found: CardFindings, { doubts, reach }: Beside): object => {
  const { title, calibrated, calibration, units } = session;
  return {
    title,
    calibrated,
    zero_range_m: calibration.rig.zeroRange,
    ...reachData(reach),
    crosswind_mps: found.crosswind,
    wind_entry_counted: entersWind(calibration.rig.conditions.arrow),
    draft: isDraft(session),
    ...leftOutData(session),
    warnings: [...warnings(session), ...doubts],
    // A door that writes the sheet puts the names of its files here.
    files: [],
    rows: dataOf(cardFields(found, units), found.rows),
    slopes: dataOf(CUT_FIELDS, found.slopes),
  };
};
