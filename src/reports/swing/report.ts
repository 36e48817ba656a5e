import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { YARD } from '../../quantities/exact.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { straightLaunch } from '../../sight/shot.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges, signedQuantity } from '../asked/quantity.ts';
import { WORST_LAUNCH } from '../asked/worst-launch.ts';
import { partsOf, requirePointFirst } from '../changed-build.ts';
import { dataOf, datumOf, tableOf } from '../field.ts';
import { flownRanges } from '../flown-ranges.ts';
import { headBlocks } from '../head.ts';
import {
  inShort,
  inWhole,
  note,
  paragraph,
  plotBlock,
  type Report,
  tableBlock,
  verdict,
  warning,
} from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { MISS_FIELDS, mainMisses, startsAcross } from '../start-misses.ts';
import { HOLE_FIELDS, START_FIELDS } from './fields.ts';
import { type SwingFindings, swingFindings } from './findings.ts';
import { swingPlot } from './plots.ts';
import type { question } from './question.ts';
import { holeTable, missTable } from './tables.ts';
import { type SaidTear, saidTear, tearData, tearWords } from './tear.ts';
import { marginWords, smallMarginWords, startWords } from './words.ts';

export function report([session]: Sessions, asked: Asked<typeof question.options>): Report {
  partsOf(session, 'swing');
  requirePointFirst(session.assembly.arrow, 'swing');
  const launch = straightLaunch(session.calibration.rig);
  const tear = asked.tear === null ? null : saidTear(session, asked.tear, asked.paper);
  const found = swingFindings(session, {
    launch,
    angle: tear === null ? signedQuantity('angle', asked.angle, 'angle', WORST_LAUNCH.angle) : tear.angle,
    nockSpeed:
      tear === null
        ? signedQuantity('nockTravel', asked.nockTravel, 'speed', WORST_LAUNCH.nockTravel)
        : tear.nockSpeed,
    ranges: flownRanges(optionRanges(asked), launch, session.units),
    papers: papers(session.units),
  });
  return {
    title: session.title,
    blocks: blocksOf(session, found, tear),
    rows: missTable(found.advice.starts, session.units),
    data: { ...dataFor(session, found), tear: tear === null ? null : tearData(tear) },
    sheet: null,
  };
}

/** Where paper is hung: two to four yards or metres. */
const papers = ({ range }: DisplayUnits): readonly Metres[] =>
  [2, 3, 4].map((count) => si(count * (range === 'yd' ? YARD : 1)));

function blocksOf(session: Session, found: SwingFindings, tear: SaidTear | null) {
  const { units } = session;
  const { advice, disturbed, papers: hung } = found;
  return [
    ...(tear === null ? [] : [verdict(tearWords(tear, session))]),
    verdict(marginWords(advice, units)),
    ...(advice.tooSmall ? [warning(smallMarginWords())] : []),
    ...headBlocks(session),
    paragraph(startWords(found, units)),
    ...inWhole(tableBlock(tableOf(START_FIELDS, disturbed, units))),
    ...inWhole(plotBlock(swingPlot(found, units))),
    paragraph('Where each launch hits, relative to a clean one; right and high positive:'),
    ...inShort(tableBlock(mainMisses(disturbed, units))),
    ...inWhole(tableBlock(startsAcross(disturbed, units))),
    ...(hung.length === 0
      ? []
      : [
          paragraph('The hole in paper, from point to nock as the archer sees it; right and high positive:'),
          ...inShort(tableBlock(holeTable(advice.starts, units, at(hung, Math.floor(hung.length / 2))))),
          ...inWhole(tableBlock(holeTable(advice.starts, units))),
        ]),
    ...inWhole(
      note(
        'This is a rigid arrow: near the bow a real tear also shows the bending of the shaft, and a clean arrow tears a ' +
          'little low because its path falls while the shaft goes through.',
      ),
    ),
  ];
}

const dataFor = (
  { title, calibrated }: Session,
  {
    advice: { staticMargin, marginSd, marginShare, tooSmall, swing, starts },
    angle,
    nockSpeed,
  }: SwingFindings,
): object => ({
  title,
  calibrated,
  static_margin_m: staticMargin,
  static_margin_sd_m: marginSd,
  margin_share: marginShare,
  least_margin_share: LEAST_MARGIN,
  margin_too_small: tooSmall,
  swing_wavelength_m: swing?.wavelength ?? null,
  swing_damping_m: swing?.dampingLength ?? null,
  start_angle_rad: angle,
  nock_travel_mps: nockSpeed,
  starts: starts.map((start) => ({
    ...datumOf(START_FIELDS, start),
    misses: dataOf(MISS_FIELDS, start.misses),
    paper: dataOf(HOLE_FIELDS, start.holes),
  })),
});
