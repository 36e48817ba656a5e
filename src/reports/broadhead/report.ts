import type { BroadheadAnswerMiss } from '../../advice/launch/broadhead.ts';
import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import type { Blades } from '../../arrow/parts/parts.ts';
import { at } from '../../numerics/at.ts';
import { straightLaunch } from '../../sight/shot.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges, positiveQuantity, signedQuantity } from '../asked/quantity.ts';
import { WORST_LAUNCH } from '../asked/worst-launch.ts';
import { caution, cautionBlocks } from '../cautions.ts';
import { partsOf } from '../changed-build.ts';
import { dataOf } from '../field.ts';
import { flownRanges } from '../flown-ranges.ts';
import { headBlocks } from '../head.ts';
import { NOT_MEASURED } from '../not-measured.ts';
import { inShort, inWhole, note, paragraph, type Report, tableBlock, verdict, warning } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { MISS_FIELDS, mainMisses, startsAcross } from '../start-misses.ts';
import { type BroadheadFindings, broadheadFindings, type Headed } from './findings.ts';
import type { question } from './question.ts';
import {
  cleanWords,
  ERROR_WORDS,
  HIGH_WORDS,
  launchWords,
  marginWords,
  SHOOTING_SHORT,
  SHOOTING_WORDS,
  smallMarginWords,
  standsWords,
  verdictWords,
} from './words.ts';

type AskedHere = Asked<typeof question.options>;

export function report([session]: Sessions, asked: AskedHere): Report {
  const { title, units } = session;
  const parts = partsOf(session, 'broadhead');
  const launch = straightLaunch(session.calibration.rig);
  const found = broadheadFindings(session, {
    parts,
    blades: parts.point.blades ?? bladesOf(asked),
    launch,
    angle: signedQuantity('angle', asked.angle, 'angle', WORST_LAUNCH.angle),
    nockSpeed: signedQuantity('nockTravel', asked.nockTravel, 'speed', WORST_LAUNCH.nockTravel),
    ranges: flownRanges(optionRanges(asked), launch, units),
  });
  const table = startsAcross(found.starts, units);
  return {
    title,
    blocks: [
      verdict(verdictWords(found, units)),
      ...(found.broadhead.tooSmall ? [warning(smallMarginWords(found))] : []),
      ...headBlocks(session),
      paragraph(marginWords(found, units)),
      ...inWhole(paragraph(NOT_MEASURED)),
      paragraph(
        'Where the broadhead hits, from where the field point hits out of the same launch; right and high positive:',
      ),
      ...inShort(
        tableBlock(mainMisses(found.starts, units, ({ highSd }) => highSd)),
        note(launchWords(found, units)),
      ),
      ...inWhole(tableBlock(table), note(`${launchWords(found, units)}\n${ERROR_WORDS}`)),
      ...inWhole(paragraph(cleanWords(found, units)), ...standsBlocks(found, units)),
      ...inWhole(...(found.isHighWhenClean ? [paragraph(HIGH_WORDS)] : [])),
      ...cautionBlocks(session, [caution(SHOOTING_WORDS, { label: '', short: SHOOTING_SHORT })]),
    ],
    rows: table,
    data: dataFor(session, found),
    sheet: null,
  };
}

const bladesOf = ({ blades, length, cuttingDiameter, thickness }: AskedHere): Blades => ({
  count: blades,
  length: positiveQuantity('length', length, 'length', '4 in'),
  cuttingDiameter: positiveQuantity('cuttingDiameter', cuttingDiameter, 'length', '4 in'),
  thickness: positiveQuantity('thickness', thickness, 'length', '0.25 in'),
});

/** Two blades, by how they stand as the arrow leaves; nothing of more, which are alike all round. */
const standsBlocks = (found: BroadheadFindings, units: Session['units']) =>
  found.blades.count === 2 ? [paragraph(standsWords(found, units))] : [];

const errorData = ({ rightSd, highSd, stands }: BroadheadAnswerMiss): object => ({
  right_sd_m: rightSd,
  high_sd_m: highSd,
  stands: stands.map(({ stand, right, high }) => ({ stand, right_m: right, high_m: high })),
});

const arrowData = ({ arrow, staticMargin, marginSd, marginShare, tooSmall }: Headed): object => ({
  mass_kg: arrow.flying.mass,
  static_margin_m: staticMargin,
  static_margin_sd_m: marginSd,
  margin_share: marginShare,
  margin_too_small: tooSmall,
  spin_per_m: arrow.flying.attitude?.spinPerMetre ?? null,
});

const dataFor = (
  { title, calibrated }: Session,
  { field, broadhead, blades, starts, angle, nockSpeed }: BroadheadFindings,
): object => ({
  title,
  calibrated,
  least_margin_share: LEAST_MARGIN,
  field: arrowData(field),
  broadhead: arrowData(broadhead),
  blades: {
    count: blades.count,
    length_m: blades.length,
    cutting_diameter_m: blades.cuttingDiameter,
    thickness_m: blades.thickness,
  },
  start_angle_rad: angle,
  nock_travel_mps: nockSpeed,
  measured_on_arrows: false,
  starts: starts.map(({ name, misses }) => ({
    name,
    rows: dataOf(MISS_FIELDS, misses).map((row, i) => ({ ...row, ...errorData(at(misses, i)) })),
  })),
});
