import { plotInPlace } from '../../documents/plot/plot.ts';
import {
  axisTitle,
  type Plot,
  type PlotPoint,
  type PlotSeries,
  share,
} from '../../documents/plot/plot-data.ts';
import { numberText } from '../../documents/table/number-text.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { itemNode } from './drawing-nodes.ts';
import { drawn, element, refill } from './element.ts';

/** Pixels of a millimetre of the drawing: its letters are then about 12 pixels high. */
const PIXELS = 5;
/** Narrower or wider than this, mm, a plot tells nothing more. */
const WIDTH = { least: 56, most: 150 } as const;
const HEIGHT = { least: 56, share: 0.58 } as const;
/** Added as often as needed where the legend leaves too little room, mm. */
const TALLER = 15;
const MOST_TRIES = 6;

/** A plot that says what stands under a finger, a pointer or the arrow keys. */
export function plotView(plot: Plot, label: string): HTMLElement {
  const name = plot.title ?? label;
  const said = element('output', { class: 'plot-value' });
  const values = stops(plot);
  const box = element('div', {
    class: 'plot',
    role: 'slider',
    tabindex: 0,
    'aria-label': `${name}: ${axisTitle(plot.y)} by ${axisTitle(plot.x)}`,
    'aria-valuemin': values[0],
    'aria-valuemax': values.at(-1),
    'aria-valuenow': values[0],
  });
  const view = element('figure', { class: 'plot-box' }, box, said);
  let place = (_x: number): void => {};
  let chosen = 0;
  const choose = (index: number): void => {
    chosen = Math.max(0, Math.min(values.length - 1, index));
    const x = values[chosen];
    if (x === undefined) return;
    const words = valueWords(plot, x);
    said.textContent = words;
    box.setAttribute('aria-valuenow', String(x));
    box.setAttribute('aria-valuetext', words);
    place(x);
  };
  const draw = (): void => {
    const width = Math.max(WIDTH.least, Math.min(WIDTH.most, view.clientWidth / PIXELS));
    const { items, area, height } = inRoom(plot, width);
    const hair = drawn('line', {
      class: 'hair',
      y1: area.y,
      y2: area.y + area.height,
      visibility: 'hidden',
      'stroke-width': 0.4,
    });
    place = (x) => {
      const at = area.x + share(x, area.scaleX) * area.width;
      hair.setAttribute('x1', String(at));
      hair.setAttribute('x2', String(at));
      hair.setAttribute('visibility', 'visible');
    };
    const svg = drawn(
      'svg',
      { viewBox: `0 0 ${width} ${height}`, 'aria-hidden': 'true', focusable: 'false' },
      items.map((item) => itemNode(item, 'screen')),
      hair,
    );
    const follow = (event: PointerEvent): void => {
      const { left, width: pixels } = svg.getBoundingClientRect();
      const along = ((event.clientX - left) / pixels) * width;
      const part = (along - area.x) / area.width;
      const x = area.scaleX.low + part * (area.scaleX.high - area.scaleX.low);
      choose(nearest(values, x));
    };
    svg.addEventListener('pointermove', follow);
    svg.addEventListener('pointerdown', follow);
    refill(box, svg);
  };
  box.addEventListener('keydown', (event) => {
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[
      event.key
    ];
    if (step !== undefined) choose(chosen + step);
    else if (event.key === 'Home') choose(0);
    else if (event.key === 'End') choose(values.length - 1);
    else return;
    event.preventDefault();
  });
  let width = 0;
  new ResizeObserver(() => {
    if (view.clientWidth === width || view.clientWidth === 0) return;
    width = view.clientWidth;
    draw();
  }).observe(view);
  return view;
}

/** The plot in a rectangle as high as it needs to be. */
function inRoom(plot: Plot, width: number) {
  let height = Math.max(HEIGHT.least, HEIGHT.share * width);
  for (let tries = 1; ; tries += 1) {
    try {
      return { ...plotInPlace(plot, { x: 0.5, y: 0.5, width: width - 1, height }), height: height + 1 };
    } catch (error) {
      if (!(error instanceof DomainError) || tries === MOST_TRIES) throw error;
      height += TALLER;
    }
  }
}

/** The places along x that have a value, in order. */
const stops = ({ series }: Plot): readonly number[] =>
  [...new Set(series.flatMap(({ points }) => points.map(({ x }) => x)))].sort((a, b) => a - b);

function nearest(values: readonly number[], x: number): number {
  const off = (i: number): number => Math.abs((values[i] ?? Number.POSITIVE_INFINITY) - x);
  return values.reduce((best, _, i) => (off(i) < off(best) ? i : best), 0);
}

/** Four significant digits are more than a line of a plot shows. */
const DIGITS = 4;
const valueText = (value: number): string => numberText(Number(value.toPrecision(DIGITS)));
const pointText = ({ y, error }: PlotPoint): string =>
  error === undefined ? valueText(y) : `${valueText(y)} ± ${valueText(error)}`;

function valueWords(plot: Plot, x: number): string {
  const unit = plot.y.unit === '' ? '' : ` ${plot.y.unit}`;
  const at = ({ points }: PlotSeries) => points.filter((point) => point.x === x);
  const there = plot.series.flatMap((series) => {
    const found = at(series);
    return found.length === 0 ? [] : [`${series.name} ${found.map(pointText).join(', ')}${unit}`];
  });
  return `${plot.x.label} ${valueText(x)}${plot.x.unit === '' ? '' : ` ${plot.x.unit}`}: ${there.join('; ')}`;
}
