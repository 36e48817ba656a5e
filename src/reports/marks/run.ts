import { type MarkUncertainty, markUncertainty } from '../../calibration/mark-uncertainty.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { paragraphs, present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeColumn, rangeWords } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { formatQuantity, fromSi, symbolOf, toSi } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { type Mark, marksFor, settingsFor } from '../../sight/marks.ts';
import { asFarAsItGoes } from '../../sight/reach.ts';
import { optionRanges } from '../asked/quantity.ts';
import { cautionLines, shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';
import { warnings } from '../warnings.ts';

export interface MarksOptions extends AnswerOptions {
  readonly from: string;
  readonly to: string;
  readonly every: string;
}

/** A mark and how sure it is. */
export interface SureMark {
  readonly mark: Mark;
  readonly uncertainty: MarkUncertainty;
}

export function runMarks(io: Io, path: string, options: MarksOptions): void {
  const session = openNamedFile(io, path, options);
  const { solved: rows, beyond } = asFarAsItGoes(session.calibration.rig, optionRanges(options), (ranges) =>
    sureMarks(session, ranges),
  );
  present(io, options, {
    text: () => text(session, rows, beyond),
    json: () => json(session, rows, beyond),
    table: () => table(session, rows),
  });
}

/** The marks of a session's rig with their uncertainties. */
export function sureMarks({ calibration }: Session, ranges: readonly Metres[]): readonly SureMark[] {
  const table = marksFor(calibration.rig, ranges);
  const uncertainty = markUncertainty(calibration, table);
  return table.marks.flatMap((mark, i) => {
    const sure = uncertainty[i];
    return sure === undefined ? [] : [{ mark, uncertainty: sure }];
  });
}

const json = (session: Session, rows: readonly SureMark[], beyond: Metres | null): object => ({
  title: session.title,
  calibrated: session.calibrated,
  warnings: warnings(session),
  zero_range_m: session.calibration.rig.zeroRange,
  out_of_reach_m: beyond,
  rows: rows.map(({ mark, uncertainty }) => ({
    range_m: mark.range,
    travel_m: mark.travel,
    travel_sd_m: uncertainty.travelSd,
    launch_angle_rad: mark.launchAngle,
    reading: mark.reading,
    reading_sd: mark.reading === null ? null : uncertainty.readingSd,
    on_target_sd_m: uncertainty.onTargetSd,
    near_crossing_m: mark.nearCrossing,
    highest_m: mark.highest.height,
    highest_range_m: mark.highest.range,
    lateral_m: mark.lateral,
    clearance_m: mark.clearance,
  })),
});

function table({ units, calibration }: Session, rows: readonly SureMark[]): Table {
  const { range, smallLength } = units;
  const digits = smallLength === 'in' ? 2 : 0;
  const scaled = calibration.rig.scale !== null;
  const reading = [
    { name: 'reading', unit: 'scale', digits: 2 },
    { name: '±', unit: 'scale', digits: 2 },
  ];
  return {
    columns: [
      rangeColumn(
        rows.map(({ mark }) => mark.range),
        units,
      ),
      ...(scaled ? reading : []),
      { name: 'travel', unit: 'mm', digits: 2 },
      { name: '± on target', unit: symbolOf(smallLength), digits },
      { name: 'launch', unit: '°', digits: 3 },
      { name: 'nearer hit', unit: symbolOf(range), digits: 1 },
      { name: 'highest', unit: symbolOf(smallLength), digits: smallLength === 'in' ? 1 : 0 },
      { name: 'at', unit: symbolOf(range), digits: 0 },
      { name: 'aside', unit: symbolOf(smallLength), digits },
    ],
    rows: rows.map(({ mark, uncertainty }) => [
      fromSi(mark.range, range),
      ...(scaled ? [mark.reading, uncertainty.readingSd] : []),
      fromSi(mark.travel, 'mm'),
      fromSi(uncertainty.onTargetSd, smallLength),
      fromSi(mark.launchAngle, 'deg'),
      mark.nearCrossing === null ? null : fromSi(mark.nearCrossing, range),
      fromSi(mark.highest.height, smallLength),
      fromSi(mark.highest.range, range),
      fromSi(mark.lateral, smallLength),
    ]),
  };
}

const text = (session: Session, rows: readonly SureMark[], beyond: Metres | null): string =>
  paragraphs([
    headLines(session).join('\n'),
    renderTableText(table(session, rows)),
    `travel: of the pin below its place at ${formatQuantity(session.calibration.rig.zeroRange, session.units.range, 0)}. ±: one standard uncertainty.
nearer hit: where the same setting hits on the way up. highest: above the line of sight, at that range.
aside: left (-) or right of the aim with the windage set at the zero range.`,
    reachNote(session, beyond),
    scaleNote(session),
    contactNote(session, rows),
    cautionLines(shotCautions(session)),
  ]);

function scaleNote({ setup, calibration }: Session): string {
  if (calibration.rig.scale !== null) return '';
  if (setup.sight.scale === undefined)
    return 'The file names no scale (sight.scale), so marks are given as travel only.';
  return 'The scale is not known yet, so marks are given as travel only: shoot marks at two ranges or more, or write sight.scale.travel_per_unit and at_zero.';
}

/** Where the arrow falls short; empty when it gets everywhere. */
export const reachNote = ({ units }: Session, beyond: Metres | null): string =>
  beyond === null
    ? ''
    : `The arrow does not get to ${rangeWords(beyond, units)} with any mark: it ends before.`;

/** Where the tape must end because the arrow would touch the sight, looked for at every whole range up to the last; empty when it never does. */
export function contactNote({ units, calibration }: Session, rows: readonly SureMark[]): string {
  const [nearest, last] = [rows[0]?.mark.range ?? 0, rows.at(-1)?.mark.range ?? 0];
  const first = Math.ceil(fromSi(nearest, units.range));
  const count = Math.max(0, Math.floor(fromSi(last, units.range)) - first + 1);
  if (count === 0 || rows.every(({ mark }) => mark.clearance >= 0)) return '';
  const ranges = Array.from({ length: count }, (_, i) => toSi(first + i, units.range));
  const touching = settingsFor(calibration.rig, ranges).find(
    ({ clearance, rising }) => clearance < 0 && !rising,
  );
  if (touching === undefined) return '';
  return `From ${formatQuantity(touching.range, units.range, 0)} on, the arrow or its vanes would touch the sight: the tape must end before.`;
}
