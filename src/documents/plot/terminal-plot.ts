import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { printableText } from '../page/printable-text.ts';
import { numberText } from '../table/number-text.ts';
import { axisTitle, type Plot, type PlotMarker, plotScales } from './plot-data.ts';
import {
  columnOf,
  drawPlotArea,
  LEVEL_SIGN,
  linePatterns,
  type PlotArea,
  pointSigns,
  rowOf,
  UPRIGHT_SIGN,
} from './terminal-plot-area.ts';

export interface TerminalSize {
  /** Characters across, everything included. */
  readonly width: number;
  /** Lines, everything included; a long legend may take more. */
  readonly height: number;
}

const FEWEST_COLUMNS = 30;
const FEWEST_LINES = 10;
const FEWEST_ROWS = 4;
/** Lines for the upright axis' title, the level axis, its numbers and its title. */
const AXIS_LINES = 4;
/** Rows and columns that a tick's number needs to stand clear of the next. */
const ROWS_PER_TICK = 3;
const COLUMNS_PER_TICK = 9;

/**
 * A plot as lines of text for a terminal: curves in braille dots, points as signs with their error bars, axes with units, a
 * level line at zero, and a legend. The same input gives the same text; no colour is used.
 *
 * @throws DomainError when there is no point, a coordinate is not finite, or the room is below 30 by 10 characters
 */
export function plotText(plot: Plot, size: TerminalSize): string {
  if (!(size.width >= FEWEST_COLUMNS))
    throw new DomainError('the width of a text plot', size.width, `${FEWEST_COLUMNS} characters or more`);
  if (!(size.height >= FEWEST_LINES))
    throw new DomainError('the height of a text plot', size.height, `${FEWEST_LINES} lines or more`);
  const title = plot.title === undefined ? [] : [printableText(plot.title)];
  const legend = legendLines(plot, size.width);
  const rows = Math.max(FEWEST_ROWS, Math.floor(size.height) - AXIS_LINES - title.length - legend.length);
  const scales = plotScales(plot, {
    x: Math.max(3, Math.floor(size.width / COLUMNS_PER_TICK)),
    y: Math.max(3, Math.floor(rows / ROWS_PER_TICK) + 1),
  });
  const numbers = scales.y.ticks.values.map((value) => numberText(value, scales.y.ticks.digits));
  const gutter = Math.max(...numbers.map((text) => text.length));
  const area: PlotArea = { ...scales, rows, columns: Math.floor(size.width) - gutter - 2 };
  const numberAt = new Map(scales.y.ticks.values.map((value, i) => [rowOf(value, area), numbers[i] ?? '']));
  return [
    ...title,
    printableText(axisTitle(plot.y)),
    ...drawPlotArea(plot, area).map((line, row) => {
      const number = numberAt.get(row);
      return `${(number ?? '').padStart(gutter)} ${number === undefined ? '│' : '┤'}${line}`.trimEnd();
    }),
    ...levelAxis(plot, area, gutter),
    ...legend,
    '',
  ].join('\n');
}

function levelAxis(plot: Plot, area: PlotArea, gutter: number): readonly string[] {
  const { values, digits } = area.x.ticks;
  const columns = values.map((value) => columnOf(value, area));
  const width = gutter + 2 + area.columns;
  const line = Array.from({ length: area.columns }, (_, i) => (columns.includes(i) ? '┬' : '─')).join('');
  // One column of the gutter is the blank before the axis, one the axis itself.
  const numbers = values.reduce((text, value, i) => {
    const number = numberText(value, digits);
    const middle = gutter + 2 + at(columns, i);
    const start = Math.max(0, Math.min(middle - Math.floor(number.length / 2), width - number.length));
    const fits = start > text.length || text === '';
    return fits ? text.padEnd(start) + number : text;
  }, '');
  return [`${' '.repeat(gutter)} └${line}`, numbers, printableText(axisTitle(plot.x)).padStart(width)];
}

/** What each curve, sign and marker stands for, as many to a line as fit. */
function legendLines(plot: Plot, width: number): readonly string[] {
  const lines = plot.series
    .filter(({ kind }) => kind !== 'points')
    .map(({ name }, i) => `${linePatterns[i % linePatterns.length]?.legend ?? ''} ${name}`);
  const points = plot.series
    .filter(({ kind }) => kind === 'points')
    .map(({ name }, i) => `${pointSigns[i % pointSigns.length] ?? ''} ${name}`);
  const entries = [...lines, ...points, ...(plot.markers ?? []).map((marker) => markerEntry(marker, plot))];
  const rows: string[] = [];
  for (const entry of entries.map(printableText)) {
    const last = rows.at(-1);
    const joined = `${last}   ${entry}`;
    if (last !== undefined && joined.length <= width) rows[rows.length - 1] = joined;
    else rows.push(entry);
  }
  return rows;
}

function markerEntry({ axis, at, label }: PlotMarker, plot: Plot): string {
  const { unit } = plot[axis];
  const sign = axis === 'x' ? UPRIGHT_SIGN : LEVEL_SIGN;
  const value = unit === '' ? numberText(at) : `${numberText(at)} ${unit}`;
  return `${sign} ${label}: ${value}`;
}
