import type { Item, PagePoint } from '../page/drawing.ts';
import type { SheetRule } from './sheet-rule.ts';
import { across, labelReach } from './strip-edges.ts';
import { AFTER_TICK, LANE } from './strip-grid.ts';
import type { LaneText } from './strip-words.ts';
import type { Branch } from './tape-content.ts';
import type { Hairline, Strip, StripTick } from './tape-strip.ts';

/** Paper between a hairline and a number or word that it stops for, mm. */
const AROUND_TEXT = 0.2;

export function tickItem(tick: StripTick, rule: SheetRule): Item {
  const { grid } = rule;
  const reach = (tick.branch === 'far' ? grid.tick : grid.nearTick)[tick.rank];
  const [from, to] = [across(0, tick.branch, rule), across(reach, tick.branch, rule)];
  if (tick.hollow === null)
    return {
      kind: 'line',
      role: 'tick',
      from: { x: from, y: tick.y },
      to: { x: to, y: tick.y },
      colour: 'ink',
      stroke: tick.stroke,
    };
  const half = tick.hollow / 2;
  return {
    kind: 'polyline',
    role: 'hollow-tick',
    points: [
      { x: from, y: tick.y - half },
      { x: to, y: tick.y - half },
      { x: to, y: tick.y + half },
      { x: from, y: tick.y + half },
    ],
    closed: true,
    fill: 'paper',
    colour: 'ink',
    stroke: 0.06,
  };
}

/** A line right across, but for the numbers and words in its way. */
export function hairlineItems(
  line: Hairline,
  strip: Strip,
  lane: LaneText | null,
  rule: SheetRule,
): readonly Item[] {
  const { form } = rule;
  const inTheWay = strip.labels.flatMap((label) => {
    const { from, to, top, bottom } = labelReach(label, rule);
    if (line.y < top - AROUND_TEXT || line.y > bottom + AROUND_TEXT) return [];
    return [label.branch === 'far' ? { from, to } : { from: form.width - to, to: form.width - from }];
  });
  const words =
    lane !== null && line.y > lane.from - AROUND_TEXT && line.y < lane.to + AROUND_TEXT
      ? [{ from: form.width - LANE.inset - LANE.size, to: form.width - LANE.inset }]
      : [];
  return gapsBetween([...inTheWay, ...words], form.width).map(({ from, to }) => ({
    kind: 'line',
    role: `${line.kind}-line`,
    from: { x: across(from, 'far', rule), y: line.y },
    to: { x: across(to, 'far', rule), y: line.y },
    colour: 'ink',
    stroke: 0.09,
    ...(line.kind === 'zero' ? { dash: [0.5, 0.4] } : {}),
  }));
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

function gapsBetween(taken: readonly Stretch[], width: number): readonly Stretch[] {
  const gaps: Stretch[] = [];
  let reached = 0;
  for (const { from, to } of taken.toSorted((a, b) => a.from - b.from)) {
    if (from - AROUND_TEXT > reached) gaps.push({ from: reached, to: from - AROUND_TEXT });
    reached = Math.max(reached, to + AROUND_TEXT);
  }
  return reached < width ? [...gaps, { from: reached, to: width }] : gaps;
}

/** Shapes in a unit square whose first point touches the tick. */
const triangle: readonly PagePoint[] = [
  { x: 0, y: 0 },
  { x: 1, y: -0.5 },
  { x: 1, y: 0.5 },
];
const diamond: readonly PagePoint[] = [
  { x: 0, y: 0 },
  { x: 0.5, y: -0.5 },
  { x: 1, y: 0 },
  { x: 0.5, y: 0.5 },
];
const TALL = 1.15;
const LEGEND_SIZE = 1.6;

/** The sign of a mark, where the strip has room for it: filled when it was shot, outlined for the zero alone. */
export function signItems({ kind, y, branch }: Hairline, rule: SheetRule): readonly Item[] {
  const { sign, tick, nearTick } = rule.grid;
  if (sign === null || kind === 'join') return [];
  const from = AFTER_TICK + (branch === 'far' ? tick.ten : nearTick.ten);
  return [
    signItem(
      kind,
      shapeOf(kind).map((point) => ({
        x: across(from + point.x * sign, branch, rule),
        y: y + point.y * sign * TALL,
      })),
    ),
  ];
}

const shapeOf = (kind: SignKind) => (kind === 'shot' ? triangle : diamond);

type SignKind = Exclude<Hairline['kind'], 'join'>;

const signItem = (role: SignKind, points: readonly PagePoint[]): Item => ({
  kind: 'polyline',
  role,
  points,
  closed: true,
  fill: role === 'zero' ? 'paper' : 'ink',
  colour: 'ink',
  stroke: 0.12,
});

/** The same signs for a legend, larger, their first point at (x, y). */
export const legendSign = (kind: SignKind, x: number, y: number): Item => ({
  ...signItem(
    kind,
    shapeOf(kind).map((p) => ({ x: x + LEGEND_SIZE * p.x, y: y + LEGEND_SIZE * p.y })),
  ),
  role: 'legend',
});

/** Grey paper under the near branch. */
export function bandItem({ top, bottom, width }: NonNullable<Strip['band']>, rule: SheetRule): Item {
  const edges = [across(0, 'near', rule), across(width, 'near', rule)];
  return {
    kind: 'rect',
    role: 'near-band',
    x: edges.reduce((a, b) => Math.min(a, b)),
    y: top,
    width,
    height: bottom - top,
    fill: 'fog',
  };
}

/** Where a leader starts: at the end of the longest tick of its branch. */
export const afterTicks = (branch: Branch, { grid }: SheetRule): number =>
  (branch === 'far' ? grid.tick : grid.nearTick).ten;
