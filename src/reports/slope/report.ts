import { asFarAsItGoes, type Reach, type Reached } from '../../sight/reach.ts';
import { anglesBothWays } from '../asked/angles.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges, signedQuantity } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { dataOf, tableOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import { reachData, reachNotes } from '../reach-words.ts';
import {
  type Block,
  inWhole,
  note,
  paragraph,
  plotBlock,
  type Report,
  tableBlock,
  verdict,
} from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { SLOPE_COLUMNS, SLOPE_DATA } from './fields.ts';
import { type SlopeFindings, slopeFindings } from './findings.ts';
import { holdLines } from './hold-words.ts';
import { slopePlot } from './plots.ts';
import type { question } from './question.ts';
import { type StandFindings, standFindings } from './stand.ts';
import { standAsked } from './stand-asked.ts';
import { STAND_COLUMNS, STAND_DATA } from './stand-fields.ts';
import { standBlocks, standVerdict } from './stand-words.ts';
import { cosineTable, cutTable, markTable } from './tables.ts';
import { cosineWords, thirdAxisWords, verdictWords } from './words.ts';

export function report([session]: Sessions, asked: Asked<typeof question.options>): Report {
  const { title, calibrated, calibration, units } = session;
  const tilted = {
    slopes: anglesBothWays(
      { option: 'steepest', text: asked.steepest },
      { option: 'angleStep', text: asked.angleStep },
    ).filter((slope) => slope !== 0),
    thirdAxis: signedQuantity('thirdAxis', asked.thirdAxis, 'angle', '10 deg'),
  };
  const { solved: found, ...reach } = asFarAsItGoes(calibration.rig, optionRanges(asked), (ranges) =>
    slopeFindings(session, { ...tilted, ranges }),
  );
  const wanted = standAsked(asked, units);
  const fromStand =
    wanted === null
      ? null
      : asFarAsItGoes(calibration.rig, wanted.ranges, (ranges) =>
          standFindings(session, { ...wanted, ranges }),
        );
  const stand = fromStand === null ? null : fromStand.solved;
  return {
    title,
    blocks: blocksOf(session, { found, reach }, fromStand),
    rows:
      stand === null ? tableOf(SLOPE_COLUMNS, found.rows, units) : tableOf(STAND_COLUMNS, stand.rows, units),
    data: {
      title,
      calibrated,
      zero_range_m: calibration.rig.zeroRange,
      ...reachData(reach),
      third_axis_rad: found.thirdAxis,
      rows: dataOf(SLOPE_DATA, found.rows),
      ...(stand === null
        ? {}
        : {
            stand_eye_height_m: stand.eye,
            stand_spot_height_m: stand.spot,
            stand_out_of_reach_m: fromStand === null ? null : fromStand.beyond,
            stand_rows: dataOf(STAND_DATA, stand.rows),
          }),
    },
    sheet: null,
  };
}

/** What slopes do, as far as the arrow gets. */
interface Slopes {
  readonly found: SlopeFindings;
  readonly reach: Reach;
}

function blocksOf(
  session: Session,
  slopes: Slopes,
  fromStand: Reached<StandFindings> | null,
): readonly Block[] {
  const { units } = session;
  if (fromStand === null)
    return [
      verdict(verdictWords(slopes.found, units)),
      ...headBlocks(session),
      ...slopeBlocks(session, slopes),
      ...cautionBlocks(session),
    ];
  return [
    verdict(standVerdict(fromStand.solved, units)),
    ...headBlocks(session),
    ...standBlocks(fromStand.solved, units),
    ...reachNotes(fromStand, units).map(note),
    ...inWhole(...slopeBlocks(session, slopes)),
    ...cautionBlocks(session),
  ];
}

function slopeBlocks({ units }: Session, { found, reach }: Slopes): readonly Block[] {
  const { rows, thirdAxis, worstCosine, worstThird } = found;
  const marks = rows.map(({ mark }) => mark);
  const holds = holdLines(marks, units);
  return [
    ...inWhole(...(worstCosine === null ? [] : [paragraph(cosineWords(worstCosine, units))])),
    paragraph(
      'The level mark to set, downhill (-) to uphill (+); "-": the pin would have to be above every mark, so set the highest:',
    ),
    tableBlock(markTable(units, marks), holds === '' ? undefined : holds),
    paragraph('For the pocket: take this off the range (its top row is the slope):'),
    tableBlock(cutTable(units, marks)),
    ...inWhole(
      paragraph('Where the cosine rule hits, low (-) or high:'),
      tableBlock(cosineTable(units, marks)),
      plotBlock(slopePlot(found, units)),
    ),
    ...(worstThird === null ? [] : [paragraph(thirdAxisWords(thirdAxis, worstThird, units))]),
    ...reachNotes(reach, units).map(note),
  ];
}
