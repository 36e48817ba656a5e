import type { Table } from '../../quillpath.ts';
import { drawn, element, refill } from '../show/element.ts';

/** One line of a tape: a range, and how far along the tape it stands. */
interface Tick {
  readonly range: number;
  readonly along: number;
}

/** The tape across the screen, to be dragged along. */
export interface TapeStrip {
  readonly view: HTMLElement;
  readonly show: (rows: Table) => void;
  readonly point: (range: number) => void;
}

const HEIGHT = 92;
const EDGE = 22;
const EVERY = { label: 10, long: 5 } as const;

const ticksOf = ({ rows }: Table): readonly Tick[] =>
  rows.flatMap(([range, along]) =>
    typeof range === 'number' && typeof along === 'number' ? [{ range, along }] : [],
  );

/** Whether a range is one of the round ones: its number of units, since a tape may count from any. */
const isRound = (range: number, step: number): boolean =>
  Math.abs(range / step - Math.round(range / step)) < 1e-6;

/**
 * The tape of the setup, drawn along the width of the screen: what a person holds against the sight, and here the way to a range.
 *
 * @param chosen is told the range of the line that was touched
 */
export function tapeStrip(chosen: (range: number) => void): TapeStrip {
  const view = element('div', { class: 'tape-strip' });
  let ticks: readonly Tick[] = [];
  let pointed = Number.NaN;
  let width = 0;
  let place = (_along: number): number => EDGE;
  const pointer = drawn('path', { class: 'pointer' });

  const draw = (): void => {
    const [first, last] = [ticks[0], ticks.at(-1)];
    if (first === undefined || last === undefined || width === 0) return;
    const alongs = ticks.map(({ along }) => along);
    const [low, high] = [Math.min(...alongs), Math.max(...alongs)];
    place = (along) => EDGE + ((along - low) / (high - low)) * (width - 2 * EDGE);
    let lastLabel = Number.NEGATIVE_INFINITY;
    const marks = ticks.flatMap(({ range, along }) => {
      const x = place(along);
      const isTen = isRound(range, EVERY.label);
      const shorter = isRound(range, EVERY.long) ? 22 : 13;
      const reach = isTen ? 30 : shorter;
      const mark = drawn('line', { x1: x, x2: x, y1: 22, y2: 22 + reach, class: isTen ? 'ten' : 'tick' });
      if (!isTen || Math.abs(x - lastLabel) < 26) return [mark];
      lastLabel = x;
      return [mark, drawn('text', { x, y: 70, 'text-anchor': 'middle' }, String(range))];
    });
    refill(
      view,
      drawn(
        'svg',
        { width, height: HEIGHT, viewBox: `0 0 ${width} ${HEIGHT}`, 'aria-hidden': 'true' },
        drawn('rect', { x: 4, y: 22, width: width - 8, height: 56, class: 'paper-strip' }),
        marks,
        pointer,
      ),
    );
    movePointer();
  };
  const movePointer = (): void => {
    const along = alongAt(ticks, pointed);
    if (along === null) {
      pointer.setAttribute('d', '');
      return;
    }
    const x = place(along);
    pointer.setAttribute('d', `M${x - 9} 4 h18 l-9 16 z M${x} 18 V80`);
  };
  const touch = (event: PointerEvent): void => {
    if (event.type === 'pointermove' && event.buttons === 0) return;
    const x = event.clientX - view.getBoundingClientRect().left;
    const nearest = ticks.reduce<Tick | null>((best, tick) => {
      const isNearer = best === null || Math.abs(place(tick.along) - x) < Math.abs(place(best.along) - x);
      return isNearer ? tick : best;
    }, null);
    if (nearest !== null) chosen(nearest.range);
    if (event.type === 'pointerdown') view.setPointerCapture(event.pointerId);
  };
  view.addEventListener('pointerdown', touch);
  view.addEventListener('pointermove', touch);
  new ResizeObserver(() => {
    if (view.clientWidth === width) return;
    width = view.clientWidth;
    draw();
  }).observe(view);
  return {
    view,
    show: (rows) => {
      ticks = ticksOf(rows);
      draw();
    },
    point: (range) => {
      pointed = range;
      movePointer();
    },
  };
}

/** Where the pointer stands between two lines of the tape. */
function alongAt(ticks: readonly Tick[], range: number): number | null {
  for (const [i, tick] of ticks.entries()) {
    const next = ticks[i + 1];
    if (tick.range === range) return tick.along;
    if (next === undefined || range < tick.range || range > next.range) continue;
    return tick.along + ((range - tick.range) / (next.range - tick.range)) * (next.along - tick.along);
  }
  return null;
}
