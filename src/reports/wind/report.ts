import { densityAltitude } from '../../atmosphere/standard.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { asFarAsItGoes, type Reach } from '../../sight/reach.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges, windSpeed } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { dataOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import { ENTRY_LEFT_OUT } from '../not-measured.ts';
import { reachData, reachNotes } from '../reach-words.ts';
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
import { elsewhere } from './elsewhere.ts';
import { AIR_FIELDS, WIND_FIELDS } from './fields.ts';
import { type WindFindings, windFindings } from './findings.ts';
import { driftPlot } from './plots.ts';
import type { question } from './question.ts';
import { airTable, driftTable, hourTable, markTable, sideTable } from './tables.ts';
import { airVerdict, tapeWords, verdictWords, windWords } from './words.ts';

export function report([session]: Sessions, asked: Asked<typeof question.options>): Report {
  const wind = { speed: windSpeed('speed', asked.speed), elsewhere: elsewhere(session.units) };
  const { solved: found, ...reach } = asFarAsItGoes(session.calibration.rig, optionRanges(asked), (ranges) =>
    windFindings(session, { ...wind, ranges }),
  );
  return {
    title: session.title,
    blocks: blocksOf(session, found, reach),
    rows: hourTable(found, session.units),
    data: dataFor(session, found, reach),
    sheet: null,
  };
}

function blocksOf(session: Session, found: WindFindings, reach: Reach) {
  const { units, calibration } = session;
  const here = formatQuantity(densityAltitude(calibration.rig.conditions.air.density), units.height, 0);
  return [
    verdict(verdictWords(found, units)),
    ...headBlocks(session),
    ...(found.entryCounted ? [] : [warning(ENTRY_LEFT_OUT)]),
    ...inShort(
      paragraph('Drift by the clock, left (-) or right; from the left it is the other way round:'),
      tableBlock(sideTable(found, units)),
    ),
    ...inWhole(
      paragraph(
        `Drift in a wind of ${windWords(found.speed, units)} by where it comes from, left (-) or right:`,
      ),
      tableBlock(driftTable(found, units)),
      plotBlock(driftPlot(found, units)),
      paragraph('What to add to the range when setting the mark:'),
      tableBlock(markTable(found, units)),
    ),
    paragraph(
      `${airVerdict(found, units)} Where the marks of the air here (density altitude ${here}) hit in other air:`,
    ),
    tableBlock(airTable(found, units)),
    ...inWhole(
      note(
        'camp: the standard atmosphere of that altitude. The bow is assumed to shoot as fast there; cold ' +
          'limbs and strings may not.',
      ),
    ),
    ...tapeWords(session, found, units).map(paragraph),
    ...reachNotes(reach, units).map(note),
    ...cautionBlocks(session),
  ];
}

const dataFor = (
  { title, calibrated }: Session,
  { effects, airs, entryCounted }: WindFindings,
  reach: Reach,
): object => ({
  title,
  calibrated,
  wind_entry_counted: entryCounted,
  ...reachData(reach),
  effects: effects.map(({ speed, from, rows }) => ({
    speed_mps: speed,
    from_rad: from,
    rows: dataOf(WIND_FIELDS, rows),
  })),
  airs: airs.map(({ other, densityAltitude: altitude, rows, holds }) => ({
    kind: other.kind,
    altitude_m: other.kind === 'altitude' ? other.altitude : null,
    temperature_K: other.air.temperature,
    pressure_Pa: other.air.pressure,
    density_kgpm3: other.air.density,
    density_altitude_m: altitude,
    holds,
    rows: dataOf(AIR_FIELDS, rows),
  })),
});
