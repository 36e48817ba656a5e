import type { StartEffect, SwingAdvice } from '../../advice/launch/swing.ts';
import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';

export interface SwingFindings {
  readonly session: Session;
  readonly advice: SwingAdvice;
  readonly angle: number;
  readonly nockSpeed: number;
}

export const swingText = (found: SwingFindings, io: Io): string =>
  paragraphs([
    marginWords(found),
    headLines(found.session).join('\n'),
    startWords(found),
    renderTableText(recoveryTable(found)),
    plotText(swingPlot(found), plotSize(io)),
    'Where each start hits, from where a clean one would; right and high positive:',
    renderTableText(missTable(found)),
    found.advice.starts.some(({ holes }) => holes.length > 0)
      ? 'The hole in paper, nock from point as the archer sees it; right and high positive:'
      : '',
    renderTableText(paperTable(found)),
    'A rigid arrow: near the bow a real tear also shows the bending of the shaft, and a clean arrow tears a little low because its path falls while the shaft goes through.',
  ]);

function marginWords({ session: { units }, advice }: SwingFindings): string {
  const { staticMargin, marginShare, swing, tooSmall } = advice;
  const sizes =
    swing === null
      ? 'A swing dies away without swinging through.'
      : `A swing is ${formatQuantity(swing.wavelength, units.range, 1)} long and falls to a third (1/e) in ${formatQuantity(swing.dampingLength, units.range, 1)}.`;
  const margin = `The air takes hold ${formatQuantity(staticMargin, units.bowLength, 1)} behind the balance point, ${(100 * marginShare).toFixed(0)} % of the arrow's length.`;
  const warning = tooSmall
    ? `Warning: that is less than ${100 * LEAST_MARGIN} %. Whatever is crooked on this arrow steers it; take smaller blades, larger vanes, or more weight in front.`
    : '';
  return [margin, sizes, warning].filter((line) => line !== '').join('\n');
}

const startWords = ({ session: { units }, angle, nockSpeed }: SwingFindings): string =>
  `Starts: the tail ${formatQuantity(angle, 'deg', 1)} left or high of the flight as the arrow leaves, or the nock travelling left at ${formatQuantity(nockSpeed, units.speed, 1)}.`;

/** The clean start is what the others are measured from. */
const disturbed = ({ starts }: SwingAdvice): readonly StartEffect[] =>
  starts.filter(({ name }) => name !== 'clean');

function recoveryTable({ session, advice }: SwingFindings): Table {
  const { range, energy, speed } = session.units;
  return {
    columns: [
      { name: 'start', unit: '' },
      { name: 'largest', unit: '°', digits: 2 },
      { name: 'a tenth left after', unit: symbolOf(range), digits: 0 },
      { name: 'energy lost', unit: symbolOf(energy), digits: 3 },
      { name: 'speed lost', unit: symbolOf(speed), digits: 3 },
    ],
    rows: disturbed(advice).map(({ name, largest, recovery, energyLost, speedLost }) => [
      name,
      fromSi(largest, 'deg'),
      recovery === null ? null : fromSi(recovery, range),
      fromSi(energyLost, energy),
      fromSi(speedLost, speed),
    ]),
  };
}

function missTable({ session, advice }: SwingFindings): Table {
  const { range, smallLength } = session.units;
  const length = { unit: symbolOf(smallLength), digits: smallLength === 'in' ? 2 : 0 };
  const starts = disturbed(advice);
  return {
    columns: [
      rangeColumn(
        (starts[0]?.misses ?? []).map((miss) => miss.range),
        { range },
      ),
      ...starts.flatMap(({ name }) => [
        { name: `${name}: right`, ...length },
        { name: `${name}: high`, ...length },
      ]),
    ],
    rows: (starts[0]?.misses ?? []).map(({ range: at }, i) => [
      fromSi(at, range),
      ...starts.flatMap(({ misses }) => [
        fromSi(misses[i]?.right ?? Number.NaN, smallLength),
        fromSi(misses[i]?.high ?? Number.NaN, smallLength),
      ]),
    ]),
  };
}

function paperTable({ session, advice }: SwingFindings): Table {
  const { range, smallLength } = session.units;
  const length = { unit: symbolOf(smallLength), digits: smallLength === 'in' ? 2 : 0 };
  return {
    columns: [
      { name: 'start', unit: '' },
      { name: 'paper at', unit: symbolOf(range), digits: 0 },
      { name: 'nock right', ...length },
      { name: 'nock high', ...length },
      { name: 'tear', ...length },
      { name: 'towards', unit: "o'clock" },
    ],
    rows: advice.starts.flatMap(({ name, holes }) =>
      holes.map((hole) => [
        name,
        fromSi(hole.range, range),
        fromSi(hole.nockRight, smallLength),
        fromSi(hole.nockHigh, smallLength),
        fromSi(hole.length, smallLength),
        clockHour(hole.clockwise),
      ]),
    ),
  };
}

/** 12 is straight up, 3 right. */
const clockHour = (clockwise: number): string =>
  String(((Math.round((clockwise * 6) / Math.PI) + 11) % 12) + 1);

function swingPlot({ session, advice }: SwingFindings): Plot {
  const { range } = session.units;
  return {
    x: { label: 'range', unit: symbolOf(range) },
    y: { label: 'nose off the flight, right or up', unit: '°' },
    series: disturbed(advice).map(({ name, trace }) => ({
      name,
      kind: 'line',
      points: trace.map((point) => ({
        x: fromSi(point.range, range),
        y: fromSi(name === 'tail high' ? point.up : point.right, 'deg'),
      })),
    })),
  };
}
