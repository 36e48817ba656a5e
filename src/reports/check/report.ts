import { exampleValues } from '../../setup/example-values.ts';
import { cautionBlocks } from '../cautions.ts';
import { exampleWarnings } from '../example-words.ts';
import { dataOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import {
  type Block,
  inShort,
  inWhole,
  paragraph,
  type Report,
  tableBlock,
  verdict,
  warning,
} from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { staleMarksIn } from '../stale-warning.ts';
import { DRAG_FIELDS, PIECE_FIELDS } from './fields.ts';
import { type CheckFindings, checkFindings } from './findings.ts';
import { partWarnings } from './part-words.ts';
import { spineData, spineOf, spineWords } from './spine.ts';
import { dragTable, pieceTable } from './tables.ts';
import {
  arrowWords,
  assumedWords,
  readAsWords,
  smallMarginWords,
  tapeWords,
  unusedWords,
  wholeArrowWords,
} from './words.ts';

export function report([session]: Sessions): Report {
  const found = checkFindings(session);
  return {
    title: session.title,
    blocks: blocksOf(session, found),
    rows: dragTable(session, found),
    data: dataFor(session, found),
    sheet: null,
  };
}

const blocksOf = (session: Session, found: CheckFindings): readonly Block[] => [
  verdict(`${session.name} is sound.`),
  ...headBlocks(session),
  ...[...partWarnings(session), ...exampleWarnings(session)].map(warning),
  ...(found.marginTooSmall ? [warning(smallMarginWords(found, session))] : []),
  ...inShort(paragraph(arrowWords(session, found))),
  ...inWhole(paragraph(wholeArrowWords(session, found))),
  ...inWhole(
    ...(session.assembly.arrow.pieces.length === 0 ? [] : [tableBlock(pieceTable(session))]),
    ...(found.dragTerms.length === 0 ? [] : [tableBlock(dragTable(session, found))]),
  ),
  paragraph(tapeWords(session)),
  paragraph(spineWords(spineOf(session))),
  paragraph(readAsWords(session)),
  paragraph(assumedWords(session, found)),
  paragraph(unusedWords(found)),
  ...cautionBlocks(session),
];

function dataFor(session: Session, found: CheckFindings): object {
  const { title, calibrated, setup, assembly, calibration } = session;
  const { arrow } = assembly;
  const { flying } = arrow;
  const { air } = calibration.rig.conditions;
  return {
    title,
    calibrated,
    mass_kg: flying.mass,
    diameter_m: flying.diameter,
    balance_m: flying.balance,
    length_m: arrow.length,
    front_of_centre: arrow.frontOfCentre,
    axial_inertia_kgm2: flying.attitude?.axialInertia ?? null,
    transverse_inertia_kgm2: flying.attitude?.transverseInertia ?? null,
    static_margin_m: arrow.staticMargin,
    static_margin_sd_m: found.marginSd,
    margin_too_small: found.marginTooSmall,
    spin_per_m: flying.attitude?.spinPerMetre ?? null,
    spin_up_m: found.spinUp,
    launch_speed_mps: calibration.rig.launchSpeed,
    drag_coefficient: found.dragCoefficient,
    drag_terms: dataOf(DRAG_FIELDS, found.dragTerms),
    pieces: dataOf(PIECE_FIELDS, arrow.pieces),
    differences: arrow.differences,
    spine: spineData(spineOf(session)),
    stale_marks_m: staleMarksIn(session)?.ranges ?? [],
    air: {
      temperature_K: air.temperature,
      pressure_Pa: air.pressure,
      humidity: air.humidity,
      density_kgpm3: air.density,
      viscosity_Pas: air.viscosity,
      density_altitude_m: found.densityAltitude,
    },
    assumed: found.assumed,
    unused: found.unused,
    parts_warnings: partWarnings(session),
    example_values: exampleValues(session.text),
    read_as: (setup.readAs ?? []).map(({ path, found: typed, readAs }) => ({
      path,
      found: typed,
      read_as: readAs,
    })),
  };
}
