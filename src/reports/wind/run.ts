import { airChanges, usualAirs } from '../../advice/range/air-change.ts';
import { CLOCK, windEffects } from '../../advice/range/wind-drift.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import { archerSpread } from '../../setup/assemble/sideways-marks.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { targetDigits } from '../side-words.ts';
import { hourOf, type WindFindings, windText } from './text.ts';

export interface WindOptions extends AnswerOptions {
  readonly speed: string;
  readonly from: string;
  readonly to: string;
  readonly every: string;
}

export function runWind(io: Io, path: string, options: WindOptions): void {
  const session = openNamedFile(io, path, options);
  const speed = optionQuantity('--speed', options.speed, 'speed');
  if (!(speed >= 0))
    throw new QuestionError(`--speed: ${options.speed} is no speed`, 'Write it without a minus sign.');
  const ranges = optionRanges(options);
  const { rig } = session.calibration;
  const found: WindFindings = {
    session,
    speed,
    ranges,
    effects: windEffects(rig, speed, CLOCK, ranges),
    airs: airChanges(rig, usualAirs(rig.conditions.air), ranges, archerSpread(session)),
  };
  present(io, options, {
    text: () => windText(found, io),
    json: () => json(found),
    table: () => everyRow(found),
  });
}

const json = ({ session, effects, airs }: WindFindings): object => ({
  title: session.title,
  calibrated: session.calibrated,
  effects: effects.map(({ speed, from, rows }) => ({
    speed_mps: speed,
    from_rad: from,
    rows: rows.map(({ range, lateral, vertical, markChange }) => ({
      range_m: range,
      lateral_m: lateral,
      vertical_m: vertical,
      mark_change_m: markChange,
    })),
  })),
  airs: airs.map(({ other, densityAltitude: altitude, rows, holds }) => ({
    kind: other.kind,
    altitude_m: other.kind === 'altitude' ? other.altitude : null,
    temperature_K: other.air.temperature,
    pressure_Pa: other.air.pressure,
    density_kgpm3: other.air.density,
    density_altitude_m: altitude,
    holds,
    rows: rows.map(({ range, vertical, travelChange }) => ({
      range_m: range,
      vertical_m: vertical,
      travel_change_m: travelChange,
    })),
  })),
});

function everyRow({ session: { units }, ranges, effects }: WindFindings): Table {
  const { range, smallLength } = units;
  const length = { unit: symbolOf(smallLength), digits: targetDigits(units) };
  return {
    columns: [
      { name: 'from', unit: '' },
      rangeColumn(ranges, units),
      { name: 'lateral', ...length },
      { name: 'vertical', ...length },
      { name: 'mark', unit: symbolOf(range), digits: 2 },
    ],
    rows: effects.flatMap(({ rows }, i) =>
      rows.map((row) => [
        hourOf(i),
        fromSi(row.range, range),
        fromSi(row.lateral, smallLength),
        fromSi(row.vertical, smallLength),
        row.markChange === null ? null : fromSi(row.markChange, range),
      ]),
    ),
  };
}
