import type { AirChange, OtherAir } from '../../advice/range/air-change.ts';
import type { WindEffect, WindMiss } from '../../advice/range/wind-drift.ts';
import { densityAltitude } from '../../atmosphere/standard.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { Cell, Table } from '../../documents/table/table.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import type { Metres, MetresPerSecond } from '../../quantities/quantity.ts';
import { shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';
import { heightWords, targetDigits } from '../side-words.ts';

/** Everything the command `wind` found. */
export interface WindFindings {
  readonly session: Session;
  readonly speed: MetresPerSecond;
  readonly ranges: readonly Metres[];
  readonly effects: readonly WindEffect[];
  readonly airs: readonly AirChange[];
}

/** Hour of the clock a wind comes from. */
export const hourOf = (i: number): string => `${i === 0 ? 12 : i} o'clock`;

/** One value of a wind by hour (down) and range (across). */
const clockTable = (
  { session: { units }, ranges, effects }: WindFindings,
  unit: string,
  digits: number,
  value: (row: WindMiss) => Cell,
): Table => ({
  columns: [{ name: 'from', unit: '' }, ...rangeColumns(units, ranges, unit, digits)],
  rows: effects.map(({ rows }, i) => [hourOf(i), ...rows.map(value)]),
});

const rangeColumns = (units: Session['units'], ranges: readonly Metres[], unit: string, digits: number) =>
  ranges.map((range) => ({ name: rangeWords(range, units), unit, digits }));

function airWords({ units }: Session, other: OtherAir): string {
  return other.kind === 'altitude'
    ? `camp at ${formatQuantity(other.altitude, units.height, 0)}`
    : `here at ${formatQuantity(other.air.temperature, units.temperature, 0)}`;
}

const airTable = ({ session, ranges, airs }: WindFindings): Table => ({
  columns: [
    { name: 'air', unit: '' },
    { name: 'density altitude', unit: symbolOf(session.units.height), digits: 0 },
    ...rangeColumns(session.units, ranges, symbolOf(session.units.smallLength), targetDigits(session.units)),
    { name: 'tape', unit: '' },
  ],
  rows: airs.map((change) => [
    airWords(session, change.other),
    fromSi(change.densityAltitude, session.units.height),
    ...change.rows.map(({ vertical }) => fromSi(vertical, session.units.smallLength)),
    change.holds ? 'holds' : 'is off',
  ]),
});

function firstLine({ session, airs }: WindFindings): string {
  const off = airs.filter(({ holds }) => !holds);
  const size = ({ worst }: AirChange): number => Math.abs(worst.vertical);
  const worst = airs.toSorted((a, b) => size(b) - size(a))[0];
  if (worst === undefined) return '';
  const { units } = session;
  const how = `${worst.other.kind === 'altitude' ? 'in a ' : ''}${airWords(session, worst.other)} it hits ${heightWords(worst.worst.vertical, units)} at ${rangeWords(worst.worst.range, units)}`;
  return off.length === 0
    ? `The tape holds in all the air below: at worst, ${how}, under a third of what one of your arrows scatters.`
    : `The tape does not hold everywhere: at worst, ${how}. Make one for each camp.`;
}

function plot({ session: { units }, ranges, effects }: WindFindings): Plot {
  const line = (hour: number) => ({
    name: `from ${hourOf(hour)}`,
    kind: 'line' as const,
    points: (effects[hour]?.rows ?? []).map(({ lateral }, i) => ({
      x: fromSi(ranges[i] ?? 0, units.range),
      y: fromSi(lateral, units.smallLength),
    })),
  });
  return {
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'drift, right positive', unit: symbolOf(units.smallLength) },
    series: [line(9), line(10), line(2), line(3)],
    markers: [{ axis: 'y', at: 0, label: 'calm' }],
  };
}

export function windText(found: WindFindings, io: Io): string {
  const { session, speed } = found;
  const { units, calibration } = session;
  const small = symbolOf(units.smallLength);
  const here = formatQuantity(densityAltitude(calibration.rig.conditions.air.density), units.height, 0);
  return paragraphs([
    firstLine(found),
    headLines(session).join('\n'),
    `Drift in ${formatQuantity(speed, units.windSpeed, 1)} by where it comes from, left (-) or right:`,
    renderTableText(
      clockTable(found, small, targetDigits(units), ({ lateral }) => fromSi(lateral, units.smallLength)),
    ),
    plotText(plot(found), plotSize(io)),
    'What to add to the range when setting the mark:',
    renderTableText(
      clockTable(found, symbolOf(units.range), 2, ({ markChange }) =>
        markChange === null ? null : fromSi(markChange, units.range),
      ),
    ),
    `Where the marks of the air here (density altitude ${here}) hit in other air, low (-) or high:`,
    renderTableText(airTable(found)),
    'camp: the standard atmosphere of that altitude. The bow is taken to shoot as fast there; cold limbs and strings may not.',
    shotCautions(session),
  ]);
}
