import type { Item } from '../page/drawing.ts';
import type { Block } from '../page/text-block.ts';

/** The inch in millimetres, by definition. */
const INCH_MM = 25.4;
const MILLIMETRE_BAR = 16;
const INCH_BAR = 22;

/**
 * Two upright bars, 100 mm and 4 in, to lay a ruler on.
 *
 * Upright like the strips they vouch for: a printer may stretch a sheet in the direction it pulls the paper, and a bar
 * across the sheet would not show it.
 */
export function checkBars(left: number, top: number): Block {
  const mm = left + MILLIMETRE_BAR;
  const inch = left + INCH_BAR;
  const beside = 5;
  return {
    items: [
      bar('check-100-mm', mm, top, 100),
      bar('check-4-in', inch, top, 4 * INCH_MM),
      ...ladder(mm, top, { step: 5, count: 20, longEvery: 2, towards: -1 }),
      ...ladder(inch, top, { step: INCH_MM / 8, count: 32, longEvery: 8, towards: 1 }),
      ...[0, 50].map((at) => figure(mm - beside, top + at, String(at), 'end')),
      figure(mm - beside, top + 100, '100 mm', 'end', 'bold'),
      ...[0, 1, 2, 3].map((at) => figure(inch + beside, top + at * INCH_MM, String(at), 'start')),
      figure(inch + beside, top + 4 * INCH_MM, '4 in', 'start', 'bold'),
    ],
    bottom: top + 4 * INCH_MM,
  };
}

const bar = (role: string, x: number, top: number, length: number): Item => ({
  kind: 'line',
  role,
  from: { x, y: top },
  to: { x, y: top + length },
  colour: 'ink',
  stroke: 0.3,
});

interface Ladder {
  readonly step: number;
  readonly count: number;
  readonly longEvery: number;
  readonly towards: 1 | -1;
}

/** How far the ticks of a ladder reach, mm. */
const TICK_REACH = { end: 4, long: 2.6, short: 1.5 } as const;

function ladder(x: number, top: number, { step, count, longEvery, towards }: Ladder): readonly Item[] {
  return Array.from({ length: count + 1 }, (_, i): Item => {
    const isEnd = i === 0 || i === count;
    const inner = i % longEvery === 0 ? TICK_REACH.long : TICK_REACH.short;
    const reach = isEnd ? TICK_REACH.end : inner;
    const y = top + i * step;
    return {
      kind: 'line',
      role: 'check-tick',
      from: { x, y },
      to: { x: x + towards * reach, y },
      colour: 'ink',
      stroke: isEnd ? 0.2 : 0.12,
    };
  });
}

const figure = (
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'end',
  weight: 'regular' | 'bold' = 'regular',
): Item => ({
  kind: 'text',
  role: 'check-text',
  x,
  y: y + 0.85,
  text,
  size: 2.4,
  weight,
  colour: weight === 'bold' ? 'ink' : 'slate',
  anchor,
});
