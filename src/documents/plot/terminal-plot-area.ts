import { brailleCanvas, dotsBetween } from './braille-canvas.ts';
import { bandEdges, type Plot, type PlotPoint, type PlotScale, share } from './plot-data.ts';

/** Signs of the point series, in their order. */
export const pointSigns: readonly string[] = ['●', '◆', '▲', '■', '○', '◇'];

/** Ink ("1") and gap along a line, in dots: they distinguish lines without colour. */
export const linePatterns: readonly { readonly dots: string; readonly legend: string }[] = [
  { dots: '1', legend: '⠒⠒⠒⠒⠒' },
  { dots: '111000', legend: '⠒⠂ ⠒⠂' },
  { dots: '100', legend: '⠂⠐ ⠂⠐' },
  { dots: '11111100', legend: '⠒⠒⠒ ⠒' },
];

const ZERO_SIGN = '─';
export const LEVEL_SIGN = '┄';
export const UPRIGHT_SIGN = '┊';

export interface PlotArea {
  readonly columns: number;
  readonly rows: number;
  readonly x: PlotScale;
  readonly y: PlotScale;
}

type Dot = readonly [column: number, row: number];

const columnDot = (value: number, { x, columns }: PlotArea) =>
  Math.round(share(value, x) * (2 * columns - 1));
const rowDot = (value: number, { y, rows }: PlotArea) => Math.round((1 - share(value, y)) * (4 * rows - 1));

/** The character column of an x, and the character row of a y, from the top left of the area. */
export const columnOf = (value: number, area: PlotArea): number => Math.floor(columnDot(value, area) / 2);
export const rowOf = (value: number, area: PlotArea): number => Math.floor(rowDot(value, area) / 4);

const dotOf = ({ x, y }: { readonly x: number; readonly y: number }, area: PlotArea): Dot => [
  columnDot(x, area),
  rowDot(y, area),
];

/** The inside of a plot as rows of characters: level and upright lines at the back, then curves, then points. */
export function drawPlotArea(plot: Plot, area: PlotArea): readonly string[] {
  const back = backLines(plot, area);
  const canvas = brailleCanvas(area.columns, area.rows);
  const lines = plot.series.filter(({ kind }) => kind !== 'points');
  for (const [i, { kind, points }] of lines.entries()) {
    const pattern = linePatterns[i % linePatterns.length]?.dots ?? '1';
    for (const edge of kind === 'line' ? [points] : bandEdges(points))
      for (const [at, [column, row]] of alongLine(edge, area).entries())
        if (pattern[at % pattern.length] === '1') canvas.dot(column, row);
  }
  const signs = new Map<string, string>();
  for (const [i, { points }] of plot.series.filter(({ kind }) => kind === 'points').entries()) {
    for (const point of points) {
      for (const [column, row] of errorBar(point, area)) canvas.dot(column, row);
      signs.set(
        `${columnOf(point.x, area)},${rowOf(point.y, area)}`,
        pointSigns[i % pointSigns.length] ?? '●',
      );
    }
  }
  return Array.from({ length: area.rows }, (_, row) =>
    Array.from(
      { length: area.columns },
      (_, column) => signs.get(`${column},${row}`) ?? canvas.at(column, row) ?? back(column, row),
    ).join(''),
  );
}

function backLines(plot: Plot, area: PlotArea): (column: number, row: number) => string {
  const markers = plot.markers ?? [];
  const upright = new Set(markers.filter(({ axis }) => axis === 'x').map(({ at }) => columnOf(at, area)));
  const level = new Set(markers.filter(({ axis }) => axis === 'y').map(({ at }) => rowOf(at, area)));
  const zero = area.y.low < 0 && area.y.high > 0 ? rowOf(0, area) : -1;
  return (column, row) => {
    if (upright.has(column)) return UPRIGHT_SIGN;
    if (level.has(row)) return LEVEL_SIGN;
    return row === zero ? ZERO_SIGN : ' ';
  };
}

/** Every dot of a line once, in order, so that a pattern runs on through its corners. */
function alongLine(points: readonly PlotPoint[], area: PlotArea): readonly Dot[] {
  const dots = points.map((point) => dotOf(point, area));
  const first = dots.slice(0, 1);
  return [...first, ...dots.slice(1).flatMap((dot, i) => dotsBetween(dots[i] ?? dot, dot).slice(1))];
}

function errorBar({ x, y, error }: PlotPoint, area: PlotArea): readonly Dot[] {
  if (error === undefined) return [];
  return dotsBetween(dotOf({ x, y: y - error }, area), dotOf({ x, y: y + error }, area));
}
