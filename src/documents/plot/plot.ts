import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import type { Colour, Item, PagePoint } from '../page/drawing.ts';
import { textBlock } from '../page/text-block.ts';
import { capHeight, textWidth } from '../page/text-measure.ts';
import { shortenedText } from '../page/wrap-text.ts';
import { numberText, typeset } from '../table/number-text.ts';
import { endNames, endNamesWidth } from './end-names.ts';
import { axisTitle, bandEdges, type Plot, type PlotScale, plotScales, share } from './plot-data.ts';
import { markerStyle, plotLegend } from './plot-legend.ts';
import { lineStyle, pointSign } from './series-style.ts';

/** A place on a page, mm. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const SMALLEST = { width: 40, height: 30 };
const SMALLEST_AREA = 12;
const TEXT_SIZE = 2.3;
const BESIDE_AXIS = 1.4;
/** Distance between ticks below which their numbers crowd, mm. */
const TICK_ROOM = { x: 12, y: 7 };
/** Half the width of the bar's cap at either end of an error bar, mm. */
const ERROR_CAP = 0.7;
/** A point on the axis' end reaches this far beyond it, mm. */
const SIGN_REACH = 1.2;

/** The room inside the axes, with what stands where in it. */
export interface PlotArea extends Rect {
  readonly scaleX: PlotScale;
  readonly scaleY: PlotScale;
}

/**
 * A plot as items inside a rectangle: title and legend on top, then the grid, the axes with round numbers and units, the
 * curves and the points with their error bars. Nothing reaches outside the rectangle.
 *
 * @throws DomainError when there is no point, a coordinate is not finite, or the rectangle is too small for what must be in it
 */
export const plotItems = (plot: Plot, rect: Rect): readonly Item[] => plotInPlace(plot, rect).items;

/** The same with the room inside the axes, for who points at a place of it. @throws DomainError as plotItems */
export function plotInPlace(
  plot: Plot,
  rect: Rect,
): { readonly items: readonly Item[]; readonly area: PlotArea } {
  if (!(rect.width >= SMALLEST.width))
    throw new DomainError('the width of a plot (mm)', rect.width, '40 or more');
  if (!(rect.height >= SMALLEST.height))
    throw new DomainError('the height of a plot (mm)', rect.height, '30 or more');
  const place = { left: rect.x, width: rect.width };
  const titleText = plot.title === undefined ? [] : [plot.title];
  const title = textBlock(
    titleText,
    { ...place, top: rect.y },
    { role: 'plot-title', size: 2.9, weight: 'bold' },
  );
  const legend = plot.namedAtEnds
    ? { items: [], bottom: title.bottom }
    : plotLegend(plot, { ...place, top: title.bottom });
  const top = legend.bottom + 1;
  const names = plot.namedAtEnds ? endNamesWidth(plot, rect.width) : 0;
  const area = plotArea(plot, { ...rect, width: rect.width - names }, top + 2.1 * TEXT_SIZE);
  const items = [
    ...title.items,
    ...legend.items,
    ...axes(plot, area, rect, top),
    ...(plot.markers ?? []).map(
      (marker): Item => acrossArea(marker.axis, marker.at, area, markerStyle, 'marker'),
    ),
    ...curves(plot, area),
    ...pointsWithErrors(plot, area),
    ...(plot.namedAtEnds ? endNames(linesOnPage(plot, area), { area, width: names }) : []),
  ];
  return { items, area };
}

/** The room inside the axes: what the numbers at the left and below leave. */
function plotArea(plot: Plot, rect: Rect, top: number): PlotArea {
  const bottom = rect.y + rect.height - 3.4 * TEXT_SIZE;
  const height = bottom - top;
  if (height < SMALLEST_AREA)
    throw new DomainError(
      'the height of a plot (mm)',
      rect.height,
      `${Math.ceil(rect.height - height + SMALLEST_AREA)} or more with this legend`,
    );
  const scales = plotScales(plot, {
    x: Math.max(4, Math.floor((rect.width - 12) / TICK_ROOM.x) + 1),
    y: Math.max(3, Math.floor(height / TICK_ROOM.y) + 1),
  });
  const widest = Math.max(...tickTexts(scales.y).map((text) => textWidth(text, TEXT_SIZE)));
  const lastHalf =
    Math.max(2 * SIGN_REACH, ...tickTexts(scales.x).map((text) => textWidth(text, TEXT_SIZE))) / 2;
  const x = rect.x + Math.max(widest + BESIDE_AXIS, lastHalf);
  return { x, y: top, width: rect.x + rect.width - lastHalf - x, height, scaleX: scales.x, scaleY: scales.y };
}

const tickTexts = ({ ticks }: PlotScale) =>
  ticks.values.map((value) => typeset(numberText(value, ticks.digits)));

const toPage = ({ x, y }: PagePoint, area: PlotArea): PagePoint => ({
  x: area.x + share(x, area.scaleX) * area.width,
  y: area.y + (1 - share(y, area.scaleY)) * area.height,
});

interface Rule {
  readonly colour: Colour;
  readonly stroke: number;
  readonly dash?: readonly [number, number];
}

/** A line across the area, at one x or at one y. */
function acrossArea(axis: 'x' | 'y', at: number, area: PlotArea, rule: Rule, role: string): Item {
  const { x, y } = toPage({ x: at, y: at }, area);
  const [from, to] =
    axis === 'x'
      ? [
          { x, y: area.y },
          { x, y: area.y + area.height },
        ]
      : [
          { x: area.x, y },
          { x: area.x + area.width, y },
        ];
  return { kind: 'line', role, from, to, ...rule };
}

function axes(plot: Plot, area: PlotArea, rect: Rect, top: number): readonly Item[] {
  const grid = { colour: 'mist', stroke: 0.1 } as const;
  const text = { kind: 'text', role: 'axis', size: TEXT_SIZE, colour: 'slate' } as const;
  const { scaleX, scaleY } = area;
  const bottom = area.y + area.height;
  const inside = ({ low, high }: PlotScale) => low < 0 && high > 0;
  return [
    ...scaleX.ticks.values.map((at) => acrossArea('x', at, area, grid, 'grid')),
    ...scaleY.ticks.values.map((at) => acrossArea('y', at, area, grid, 'grid')),
    ...(inside(scaleY) ? [acrossArea('y', 0, area, { colour: 'slate', stroke: 0.2 }, 'zero')] : []),
    acrossArea('x', scaleX.low, area, { colour: 'ink', stroke: 0.2 }, 'axis-line'),
    acrossArea('y', scaleY.low, area, { colour: 'ink', stroke: 0.2 }, 'axis-line'),
    ...tickTexts(scaleX).map((number, i): Item => {
      const { x } = toPage({ x: at(scaleX.ticks.values, i), y: 0 }, area);
      return { ...text, x, y: bottom + 1.35 * TEXT_SIZE, text: number, anchor: 'middle' };
    }),
    ...tickTexts(scaleY).map((number, i): Item => {
      const { y } = toPage({ x: 0, y: at(scaleY.ticks.values, i) }, area);
      return {
        ...text,
        x: area.x - BESIDE_AXIS,
        y: y + (capHeight * TEXT_SIZE) / 2,
        text: number,
        anchor: 'end',
      };
    }),
    { ...text, x: rect.x, y: top + TEXT_SIZE, text: shortened(axisTitle(plot.y), rect.width), colour: 'ink' },
    {
      ...text,
      x: area.x + area.width,
      y: bottom + 2.8 * TEXT_SIZE,
      text: shortened(axisTitle(plot.x), area.width),
      colour: 'ink',
      anchor: 'end',
    },
  ];
}

const shortened = (text: string, width: number) => shortenedText(text, { size: TEXT_SIZE, width });

/** The lines of a plot where they stand on the page, in the order of their styles. */
const linesOnPage = (plot: Plot, area: PlotArea) =>
  plot.series
    .filter(({ kind }) => kind === 'line')
    .map(({ name, points }) => ({ name, points: points.map((point) => toPage(point, area)) }));

function curves(plot: Plot, area: PlotArea): readonly Item[] {
  return plot.series
    .filter(({ kind }) => kind !== 'points')
    .flatMap(({ kind, points }, i) =>
      (kind === 'line' ? [points] : bandEdges(points)).map((edge) => ({
        kind: 'polyline',
        role: 'curve',
        points: edge.map((point) => toPage(point, area)),
        ...lineStyle(i),
      })),
    );
}

function pointsWithErrors(plot: Plot, area: PlotArea): readonly Item[] {
  return plot.series
    .filter(({ kind }) => kind === 'points')
    .flatMap(({ points }, i) =>
      points.flatMap(({ x, y, error = 0 }) => [
        ...(error === 0
          ? []
          : errorBar(toPage({ x, y: y - error }, area), toPage({ x, y: y + error }, area))),
        pointSign(i, toPage({ x, y }, area)),
      ]),
    );
}

function errorBar(low: PagePoint, high: PagePoint): readonly Item[] {
  const line = (from: PagePoint, to: PagePoint): Item => ({
    kind: 'line',
    role: 'error',
    from,
    to,
    colour: 'ink',
    stroke: 0.15,
  });
  const cap = ({ x, y }: PagePoint) => line({ x: x - ERROR_CAP, y }, { x: x + ERROR_CAP, y });
  return [line(low, high), cap(low), cap(high)];
}
