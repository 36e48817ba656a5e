import { DomainError } from '../../quantities/domain-error.ts';
import { type NiceTicks, niceAxis, niceTicks } from './nice-ticks.ts';

export interface PlotPoint {
  readonly x: number;
  readonly y: number;
  /** Half the length of the error bar, or half the height of the band there, in the unit of y. */
  readonly error?: number;
}

export interface PlotSeries {
  readonly name: string;
  /** Joined by a line, each point on its own, or two lines an error above and below the points. */
  readonly kind: 'line' | 'points' | 'band';
  readonly points: readonly PlotPoint[];
}

export interface PlotAxis {
  readonly label: string;
  readonly unit: string;
  /** Values the axis reaches even if no point does. */
  readonly reaches?: readonly number[];
  /** From the least value to the most instead of outwards to round numbers. */
  readonly tight?: boolean;
}

/** The upper and the lower line of a band. */
export const bandEdges = (points: readonly PlotPoint[]): readonly (readonly PlotPoint[])[] =>
  [1, -1].map((side) => points.map(({ x, y, error = 0 }) => ({ x, y: y + side * error })));

/** A line right across the plot: at one x (upright) or at one y (level). */
export interface PlotMarker {
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly label: string;
}

/** What a plot shows, in the units its axes name; the same for a terminal and for paper. */
export interface Plot {
  readonly title?: string;
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  readonly series: readonly PlotSeries[];
  readonly markers?: readonly PlotMarker[];
  /** Whether lines carry signs and, on paper, their names at their ends in place of a legend: for many alike. */
  readonly namedAtEnds?: boolean;
}

export interface PlotScale {
  readonly low: number;
  readonly high: number;
  readonly ticks: NiceTicks;
}

export const axisTitle = ({ label, unit }: PlotAxis): string => (unit === '' ? label : `${label} (${unit})`);

/**
 * The scales of a plot: each from a round number to a round number around its points, error bars and markers, or, when it
 * is to be tight, just around them.
 *
 * @param room the most ticks there is room for along each axis, 3 or more
 * @throws DomainError when there is no point or a coordinate is not finite
 */
export function plotScales(
  plot: Plot,
  room: { readonly x: number; readonly y: number },
): { x: PlotScale; y: PlotScale } {
  const points = plot.series.flatMap((series) => series.points);
  if (points.length === 0) throw new DomainError('points in a plot', 0, 'at least one');
  const also = (axis: 'x' | 'y') => [
    ...(plot.markers ?? []).filter((marker) => marker.axis === axis).map(({ at }) => at),
    ...(plot[axis].reaches ?? []),
  ];
  return {
    x: scaleOver([...points.map(({ x }) => x), ...also('x')], room.x, plot.x.tight),
    y: scaleOver(
      [...points.flatMap(({ y, error = 0 }) => [y - error, y + error]), ...also('y')],
      room.y,
      plot.y.tight,
    ),
  };
}

/** Differences this small, in any unit that a plot uses, are rounding and not a shape. */
const SMALLEST_SPAN = 1e-12;
const ROUNDING = 1e-9;

function scaleOver(values: readonly number[], room: number, tight = false): PlotScale {
  for (const value of values)
    if (!Number.isFinite(value)) throw new DomainError('a coordinate in a plot', value, 'finite numbers');
  const least = values.reduce((a, b) => Math.min(a, b));
  const most = values.reduce((a, b) => Math.max(a, b));
  const furthest = Math.max(Math.abs(least), Math.abs(most));
  const isLevel = most - least <= Math.max(SMALLEST_SPAN, ROUNDING * furthest);
  const margin = isLevel ? roomAboutLevel(furthest) : 0;
  if (tight && !isLevel) return { low: least, high: most, ticks: niceTicks(least, most, room) };
  const ticks = niceAxis(least - margin, most + margin, room);
  return { low: ticks.values[0] ?? least, high: ticks.values.at(-1) ?? most, ticks };
}

/** A level line has no span of its own; half its height about it, or one unit about zero, shows it as level. */
const roomAboutLevel = (height: number): number => (height > SMALLEST_SPAN ? height / 2 : 1);

/** Where a value stands on a scale: 0 at its low end, 1 at its high end. */
export const share = (value: number, { low, high }: PlotScale): number => (value - low) / (high - low);
