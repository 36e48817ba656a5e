import { type Axis, gridPoint } from '../../advice/builds/vary.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import type { Plot, PlotSeries } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import type { Column, Table } from '../../documents/table/table.ts';
import { cautionLines, isLight, lightArrow, shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import type { VariedKey } from './axes.ts';
import type { Cell } from './cells.ts';
import type { Varied } from './findings.ts';
import type { Output } from './outputs.ts';

/** A key as a heading: what it is about, without the sections everything arrow-like stands in. */
const heading = (name: string): string =>
  name.replace(/^(arrow\.parts|arrow|launch)\./, '').replace(/[._]/g, ' ');

/** A row for every combination: the keys, then what is shown. */
export function varyTable({ axes, outputs, cells }: Varied): Table {
  return {
    columns: [
      ...axes.map(({ name, unit }): Column => ({ name: heading(name), unit })),
      ...outputs.map(({ wording: { label, unit, digits } }): Column => ({ name: label, unit, digits })),
    ],
    rows: cells.map((cell, i) => [
      ...gridPoint(axes.map(shownValues), i),
      ...outputs.map((output) => shownOf(cell, output)),
    ]),
  };
}

/** The values of a key as they are shown: numbers of one unit, or words. */
const shownValues = ({ name, values, numbers }: VariedKey): Axis<number | string> => ({
  name,
  values: numbers ?? values,
});

function shownOf(cell: Cell, { of, wording }: Output): number | null {
  const value = 'failure' in cell ? null : of(cell);
  return value === null ? null : wording.shown(value);
}

/** The first numeric key along, a curve for each value of the other. Null when there is nothing to draw. */
function varyPlot({ axes, plotted, cells }: Varied): Plot | null {
  const along = axes.findIndex(({ numbers }) => numbers !== null && numbers.length > 1);
  const x = axes[along];
  const [output] = plotted;
  if (x === undefined || output === undefined) return null;
  const other = axes.find((axis) => axis !== x);
  const series = (other?.values ?? ['']).slice(0, MOST_CURVES).map(
    (value): PlotSeries => ({
      name: other === undefined ? output.wording.label : `${heading(other.name)} ${value}`,
      kind: 'line',
      points: cells.flatMap((cell, i) => {
        const point = gridPoint(axes, i);
        const y = shownOf(cell, output);
        const number = x.numbers?.[x.values.indexOf(point[along] ?? '')];
        if (y === null || number === undefined) return [];
        return other === undefined || point[axes.indexOf(other)] === value ? [{ x: number, y }] : [];
      }),
    }),
  );
  if (series.every(({ points }) => points.length === 0)) return null;
  return {
    x: { label: heading(x.name), unit: x.unit },
    y: { label: output.wording.label, unit: output.wording.unit },
    series,
  };
}

/** More curves cannot be told apart in a terminal. */
const MOST_CURVES = 4;
export function varyText(varied: Varied, io: Io): string {
  const { session, axes, cells } = varied;
  const plot = varyPlot(varied);
  const speedSet = axes.some(({ name }) => name.startsWith('launch.'));
  return paragraphs([
    headLines(session).join('\n'),
    renderTableText(varyTable(varied)),
    plot === null ? '' : plotText(plot, plotSize(io)),
    failureLines(varied),
    speedSet
      ? 'The launch speed is as varied.'
      : "The launch speed follows the bow's energy, v = √(2E/(m + K)), and that the draw weight times the power stroke where they are varied.",
    lightLines(cells),
    cautionLines(shotCautions(session)),
  ]);
}

function failureLines({ axes, cells }: Varied): string {
  const failures = cells.flatMap((cell, i) =>
    'failure' in cell ? [`${gridPoint(axes, i).join(', ')}: ${cell.failure}.`] : [],
  );
  if (failures.length === 0) return '';
  const more = failures.length - MOST_FAILURES;
  return [
    `"-": no answer for ${failures.length} of ${cells.length} combinations, because of what they set together with the rest of the file:`,
    ...failures.slice(0, MOST_FAILURES),
    more > 0 ? `${more} more.` : '',
  ]
    .filter((line) => line !== '')
    .join('\n');
}
/** One kind of failure repeats itself. */
const MOST_FAILURES = 3;

function lightLines(cells: readonly Cell[]): string {
  const light = cells.filter((cell) => {
    const perDraw = 'failure' in cell ? null : cell.facts.massPerDraw;
    return perDraw !== null && isLight(perDraw);
  });
  if (light.length === 0) return '';
  return `Caution: ${light.length} of ${cells.length} combinations are light: ${lightArrow()}`;
}
