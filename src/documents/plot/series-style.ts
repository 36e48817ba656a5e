import type { Colour, Item, PagePoint } from '../page/drawing.ts';

/** How a curve differs from the others: by dash first, so that it survives a black-and-white printer, then by colour. */
export interface LineStyle {
  readonly colour: Colour;
  readonly dash?: readonly [number, number];
}

const lineStyles: readonly LineStyle[] = [
  { colour: 'ink' },
  { colour: 'lake', dash: [1.8, 0.8] },
  { colour: 'clay', dash: [0.5, 0.6] },
  { colour: 'slate', dash: [3.2, 0.7] },
  { colour: 'lake', dash: [1, 1.4] },
  { colour: 'clay', dash: [4.5, 1.6] },
  { colour: 'ink', dash: [0.3, 1.1] },
  { colour: 'slate', dash: [2.2, 2] },
];

const POINT_SIZE = 0.8;
const CURVE_STROKE = 0.32;

/** The style of the curve with this number; beyond the last they begin again. */
export function lineStyle(index: number): LineStyle & { readonly stroke: number } {
  return { ...(lineStyles[index % lineStyles.length] ?? { colour: 'ink' }), stroke: CURVE_STROKE };
}

const polygon = (corners: number, turn: number, size = 1): readonly PagePoint[] =>
  Array.from({ length: corners }, (_, i) => {
    const angle = turn + (2 * Math.PI * i) / corners;
    return { x: size * Math.sin(angle), y: -size * Math.cos(angle) };
  });

const pointShapes: readonly { readonly shape: readonly PagePoint[]; readonly open: boolean }[] = [
  { shape: polygon(24, 0), open: false },
  { shape: polygon(4, 0, 1.25), open: true },
  { shape: polygon(3, 0, 1.25), open: false },
  { shape: polygon(4, Math.PI / 4, 1.15), open: true },
  { shape: polygon(24, 0), open: true },
  { shape: polygon(4, 0, 1.25), open: false },
  { shape: polygon(3, 0, 1.25), open: true },
  { shape: polygon(4, Math.PI / 4, 1.15), open: false },
];

/** The sign of the point series with this number, its middle at (x, y). */
export function pointSign(index: number, { x, y }: PagePoint): Item {
  const { shape, open } = pointShapes[index % pointShapes.length] ?? { shape: polygon(24, 0), open: false };
  return {
    kind: 'polyline',
    role: 'point',
    points: shape.map((p) => ({ x: x + p.x * POINT_SIZE, y: y + p.y * POINT_SIZE })),
    closed: true,
    fill: open ? 'paper' : 'ink',
    colour: 'ink',
    stroke: 0.22,
  };
}
