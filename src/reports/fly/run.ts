import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs, present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeColumn, rangeWords } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { carry } from '../../flight/carry.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { type ShotRow, shotRows, straightLaunch } from '../../sight/shot.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { cautionLines, shotCautions } from '../cautions.ts';
import { flownRanges } from '../flown-ranges.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';

export interface FlyOptions extends AnswerOptions {
  readonly to: string;
  readonly every: string;
  readonly aim?: string;
}

interface Shot {
  readonly aim: Metres;
  readonly launchAngle: number;
  readonly rows: readonly ShotRow[];
  /** What became of rows that were asked for and are not there. */
  readonly left: readonly string[];
}

export function runFly(io: Io, path: string, options: FlyOptions): void {
  const session = openNamedFile(io, path, options);
  const aim =
    options.aim === undefined
      ? session.calibration.rig.zeroRange
      : optionQuantity('aim', options.aim, 'length');
  const shot = shoot(session, aim, optionRanges({ to: options.to, every: options.every }));
  present(io, options, {
    text: () => text(session, shot, io),
    json: () => json(session, shot),
    table: () => table(session, shot),
  });
}

function shoot({ calibration, units }: Session, aim: Metres, ranges: readonly Metres[]): Shot {
  const { rig } = calibration;
  const launch = straightLaunch(rig, aim);
  const free = flownRanges(ranges, launch, units);
  const flown = reached(rig, free);
  return {
    aim,
    launchAngle: Math.atan2(launch.velocity[1], launch.velocity[0]),
    left: [
      ...(free.length < ranges.length
        ? [`Rows begin at ${rangeWords(free[0] ?? 0, units)}: nearer the arrow is still on the string.`]
        : []),
      ...(flown.length < free.length
        ? [`Rows end at ${rangeWords(flown.at(-1) ?? 0, units)}: no shot of this arrow carries to the next.`]
        : []),
    ],
    rows: shotRows(rig.conditions, launch, flown),
  };
}

/** Of the ranges, those that some shot of this arrow over level ground could reach; downhill there is no such end. */
function reached({ conditions, launchSpeed }: Rig, ranges: readonly Metres[]): readonly Metres[] {
  if (conditions.slope < 0 || (ranges.at(-1) ?? 0) < SURELY_REACHED) return ranges;
  const { distance } = carry(conditions, launchSpeed);
  const within = ranges.filter((range) => range <= distance);
  if (within.length > 0) return within;
  throw new QuestionError(
    `{to}: no shot of this arrow carries farther than ${distance.toFixed(0)} m`,
    'Write a nearer {to} and a shorter {every}.',
  );
}

/** Nearer than this every bow reaches; the search for the farthest is spared, m. */
const SURELY_REACHED = 100;

const json = (session: Session, { aim, launchAngle, rows }: Shot): object => ({
  title: session.title,
  calibrated: session.calibrated,
  aim_range_m: aim,
  launch_angle_rad: launchAngle,
  rows: rows.map((row) => ({
    range_m: row.range,
    time_s: row.time,
    speed_mps: row.speed,
    drop_m: row.drop,
    height_m: row.height,
    drift_m: row.lateral,
    spin_radps: row.spin,
    energy_J: row.energy,
    momentum_kgmps: row.momentum,
  })),
});

function table({ units }: Session, { rows }: Shot): Table {
  const { range, smallLength, speed, energy, momentum, spin } = units;
  const drift = smallLength === 'in' ? 3 : 1;
  return {
    columns: [
      rangeColumn(
        rows.map((row) => row.range),
        { range },
      ),
      { name: 'time', unit: 's', digits: 3 },
      { name: 'speed', unit: symbolOf(speed), digits: 1 },
      { name: 'drop', unit: symbolOf(smallLength), digits: smallLength === 'in' ? 1 : 0 },
      { name: 'height', unit: symbolOf(smallLength), digits: smallLength === 'in' ? 1 : 0 },
      { name: 'drift', unit: symbolOf(smallLength), digits: drift },
      { name: 'spin', unit: symbolOf(spin), digits: 0 },
      { name: 'energy', unit: symbolOf(energy), digits: 1 },
      { name: 'momentum', unit: symbolOf(momentum), digits: 3 },
    ],
    rows: rows.map((row) => [
      fromSi(row.range, range),
      row.time,
      fromSi(row.speed, speed),
      fromSi(row.drop, smallLength),
      fromSi(row.height, smallLength),
      fromSi(row.lateral, smallLength),
      fromSi(row.spin, spin),
      fromSi(row.energy, energy),
      fromSi(row.momentum, momentum),
    ]),
  };
}

function plot({ units }: Session, { rows, aim }: Shot): Plot {
  const point = (row: ShotRow) => ({
    x: fromSi(row.range, units.range),
    y: fromSi(row.height, units.smallLength),
  });
  return {
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'height above the line of sight', unit: symbolOf(units.smallLength) },
    series: [
      {
        name: `path, sighted in for ${rangeWords(aim, units)}`,
        kind: 'line',
        points: rows.map(point),
      },
    ],
    markers: [{ axis: 'y', at: 0, label: 'line of sight' }],
  };
}

const text = (session: Session, shot: Shot, io: Io): string =>
  paragraphs([
    headLines(session).join('\n'),
    `Sighted in for ${rangeWords(shot.aim, session.units)}: launched ${formatQuantity(shot.launchAngle, 'deg', 3)} above the line of sight.`,
    renderTableText(table(session, shot)),
    plotText(plot(session, shot), plotSize(io)),
    shot.left.join('\n'),
    [
      'drop: below the launch line. height: above the line of sight. drift: right positive, of a bow pointed straight ahead.',
      session.assembly.arrow.staticMargin === null
        ? 'The file names no parts, so the arrow flies as a point: no spin and no drift by it.'
        : '',
    ]
      .filter((line) => line !== '')
      .join('\n'),
    cautionLines(shotCautions(session)),
  ]);
