import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import type { Plot, PlotSeries } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeColumn, rangeWords } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { formatQuantity, fromSi, symbolOf, toSi } from '../../quantities/format.ts';
import { cautionLines, shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import { targetDigits } from '../side-words.ts';
import type { CantFindings } from './findings.ts';
import { leanLines, leanWords } from './lean-words.ts';
import { causeTable, sidewaysWords } from './sideways-words.ts';

export const cantText = (found: CantFindings, io: Io): string =>
  paragraphs([
    leanWords(found),
    headLines(found.session).join('\n'),
    leanLines(found),
    'Drift by cause with the bow upright, left (-) or right:',
    renderTableText(driftTable(found)),
    plotText(driftPlot(found), plotSize(io)),
    found.measured === null ? '' : 'What the groups say about left and right:',
    found.measured === null ? '' : renderTableText(causeTable(found)),
    sidewaysWords(found),
    'What a lean that nobody noticed costs, left (-) or right, and low (-) or high:',
    renderTableText(costTable(found)),
    `kept: the same lean held always, windage and height set again at ${rangeWords(found.session.calibration.rig.zeroRange, found.session.units)}.`,
    cautionLines(shotCautions(found.session)),
  ]);

function driftTable({ session: { units }, ranges, drift, measured, lean }: CantFindings): Table {
  const { range, smallLength } = units;
  const digits = targetDigits(units) + 1;
  const length = { unit: symbolOf(smallLength), digits };
  const placed = drift.some(({ coriolis }) => coriolis !== null);
  return {
    columns: [
      rangeColumn(ranges, units),
      { name: 'gyroscopic', ...length },
      { name: 'shaft force, ceiling', ...length },
      ...(placed ? [{ name: 'Earth', ...length }] : []),
      ...(measured === null
        ? []
        : [
            { name: 'measured', ...length },
            { name: '±', ...length },
          ]),
      { name: 'aside now', ...length },
      { name: 'with the lean', ...length },
    ],
    rows: drift.map(({ range: at, gyroscopic, shaftForceCeiling, coriolis }, i) => [
      fromSi(at, range),
      fromSi(gyroscopic, smallLength),
      fromSi(shaftForceCeiling, smallLength),
      ...(placed ? [coriolis === null ? null : fromSi(coriolis, smallLength)] : []),
      ...(measured === null
        ? []
        : [fromSi(measured[i]?.lateral ?? 0, smallLength), fromSi(measured[i]?.sd ?? 0, smallLength)]),
      fromSi(lean.now[i] ?? 0, smallLength),
      fromSi(lean.left[i] ?? 0, smallLength),
    ]),
  };
}

function driftPlot({ session: { units }, ranges, drift, fit, measured }: CantFindings): Plot {
  const { range, smallLength } = units;
  const line = (name: string, values: readonly number[]): PlotSeries => ({
    name,
    kind: 'line',
    points: values.map((y, i) => ({ x: fromSi(ranges[i] ?? 0, range), y: fromSi(y, smallLength) })),
  });
  return {
    x: { label: 'range', unit: symbolOf(range) },
    y: { label: 'curved drift, right positive', unit: symbolOf(smallLength) },
    series: [
      line(
        'gyroscopic',
        drift.map(({ gyroscopic }) => gyroscopic),
      ),
      line(
        'with the shaft force at its ceiling',
        drift.map(({ gyroscopic, shaftForceCeiling }) => gyroscopic + shaftForceCeiling),
      ),
      ...(measured === null
        ? []
        : [
            line(
              'measured, fitted',
              measured.map(({ lateral }) => lateral),
            ),
            {
              name: 'groups without their windage, ± one standard uncertainty',
              kind: 'points' as const,
              points: fit.residuals.map(({ mark, curved, sd }) => ({
                x: fromSi(mark.range, range),
                y: fromSi(curved, smallLength),
                error: fromSi(sd, smallLength),
              })),
            },
          ]),
    ],
    markers: [{ axis: 'y', at: 0, label: 'straight' }],
  };
}

/** Cants shown to a person; --json and --csv have them all. */
const SHOWN = 3;

function costTable({ session: { units }, ranges, errors, effects }: CantFindings): Table {
  const { range, smallLength } = units;
  const degree = toSi(1, 'deg');
  const length = { unit: symbolOf(smallLength), digits: targetDigits(units) };
  const clockwise = effects.filter(({ cant }) => cant > 1e-9);
  const step = Math.max(1, Math.ceil(clockwise.length / SHOWN));
  const shown = clockwise.filter((_, i) => (clockwise.length - 1 - i) % step === 0);
  return {
    columns: [
      rangeColumn(ranges, units),
      { name: 'per degree', ...length },
      { name: 'per degree, kept', ...length },
      ...shown.flatMap(({ cant }) => {
        const name = formatQuantity(cant, 'deg', 1).replace(/\.0(?= )/, '');
        return [
          { name, ...length },
          { name: 'low', ...length },
        ];
      }),
    ],
    rows: errors.map((error, i) => [
      fromSi(error.range, range),
      fromSi(error.lateralPerRadian * degree, smallLength),
      fromSi(error.rezeroedPerRadian * degree, smallLength),
      ...shown.flatMap(({ rows }) => [
        fromSi(rows[i]?.lateral ?? 0, smallLength),
        fromSi(rows[i]?.vertical ?? 0, smallLength),
      ]),
    ]),
  };
}

/** Every cant at every range. */
export function cantTable({ session: { units }, ranges, effects }: CantFindings): Table {
  const { range, smallLength } = units;
  const length = { unit: symbolOf(smallLength), digits: targetDigits(units) + 1 };
  return {
    columns: [
      { name: 'cant', unit: '°', digits: 2 },
      rangeColumn(ranges, units),
      { name: 'lateral', ...length },
      { name: 'vertical', ...length },
      { name: 'lateral, zero set again', ...length },
      { name: 'vertical, zero set again', ...length },
    ],
    rows: effects.flatMap(({ cant, rows, rezeroed }) =>
      rows.map((row, i) => [
        fromSi(cant, 'deg'),
        fromSi(row.range, range),
        fromSi(row.lateral, smallLength),
        fromSi(row.vertical, smallLength),
        fromSi(rezeroed[i]?.lateral ?? 0, smallLength),
        fromSi(rezeroed[i]?.vertical ?? 0, smallLength),
      ]),
    ),
  };
}
