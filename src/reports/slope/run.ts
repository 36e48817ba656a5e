import { thirdAxisMisses } from '../../advice/lean/third-axis.ts';
import { type SlopeMark, slopeMarks } from '../../advice/range/slope.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import { readingAt } from '../../sight/scale.ts';
import { anglesBothWays } from '../asked/angles.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import type { Session } from '../session.ts';
import { targetDigits } from '../side-words.ts';
import { type SlopeFindings, slopeText } from './text.ts';

export interface SlopeOptions extends AnswerOptions {
  readonly from: string;
  readonly to: string;
  readonly every: string;
  readonly steepest: string;
  readonly angleStep: string;
  readonly thirdAxis: string;
}

export function runSlope(io: Io, path: string, options: SlopeOptions): void {
  const session = openNamedFile(io, path, options);
  const ranges = optionRanges(options);
  const slopes = anglesBothWays(
    { option: 'steepest', text: options.steepest },
    { option: 'angleStep', text: options.angleStep },
  ).filter((slope) => slope !== 0);
  const thirdAxis = optionQuantity('thirdAxis', options.thirdAxis, 'angle');
  const { rig } = session.calibration;
  const third = thirdAxisMisses(rig, thirdAxis, ranges, slopes);
  const rows = slopeMarks(rig, ranges, slopes).flatMap((mark, i) => {
    const miss = third[i];
    return miss === undefined ? [] : [{ mark, third: miss }];
  });
  const found: SlopeFindings = { session, thirdAxis, rows };
  present(io, options, {
    text: () => slopeText(found, io),
    json: () => json(found),
    table: () => everyRow(found),
  });
}

const json = ({ session, rows, thirdAxis }: SlopeFindings): object => ({
  title: session.title,
  calibrated: session.calibrated,
  zero_range_m: session.calibration.rig.zeroRange,
  third_axis_rad: thirdAxis,
  rows: rows.map(({ mark, third }) => ({
    range_m: mark.range,
    slope_rad: mark.slope,
    mark_range_m: mark.markRange,
    travel_m: mark.travel,
    reading: readingOf(session, mark),
    cosine_range_m: mark.cosineRange,
    miss_by_cosine_m: mark.missByCosine,
    miss_by_range_m: mark.missByRange,
    third_axis_cant_rad: third.cant,
    third_axis_lateral_m: third.lateral,
    third_axis_vertical_m: third.vertical,
  })),
});

const readingOf = ({ calibration: { rig } }: Session, { travel }: SlopeMark): number | null =>
  rig.scale === null ? null : readingAt(rig.scale, travel);

function everyRow({ session, rows }: SlopeFindings): Table {
  const { range, smallLength } = session.units;
  const length = { unit: symbolOf(smallLength), digits: targetDigits(session.units) };
  return {
    columns: [
      { name: 'slope', unit: '°', digits: 1 },
      rangeColumn(
        rows.map(({ mark }) => mark.range),
        { range },
      ),
      { name: 'mark to set', unit: symbolOf(range), digits: 1 },
      { name: 'reading', unit: 'scale', digits: 2 },
      { name: 'travel', unit: 'mm', digits: 2 },
      { name: 'cosine rule', unit: symbolOf(range), digits: 1 },
      { name: 'hit by cosine', ...length },
      { name: 'hit by range', ...length },
      { name: 'third axis', ...length },
    ],
    rows: rows.map(({ mark, third }) => [
      fromSi(mark.slope, 'deg'),
      fromSi(mark.range, range),
      mark.markRange === null ? null : fromSi(mark.markRange, range),
      readingOf(session, mark),
      fromSi(mark.travel, 'mm'),
      fromSi(mark.cosineRange, range),
      fromSi(mark.missByCosine, smallLength),
      fromSi(mark.missByRange, smallLength),
      fromSi(third.lateral, smallLength),
    ]),
  };
}
