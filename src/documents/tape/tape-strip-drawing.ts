import type { Item } from '../page/drawing.ts';
import { capHeight } from '../page/text-measure.ts';
import { type SheetRule, weightOf } from './sheet-rule.ts';
import { across, anchorAt, isSideways, labelReach, turnAlong } from './strip-edges.ts';
import { LANE } from './strip-grid.ts';
import { afterTicks, bandItem, hairlineItems, signItems, tickItem } from './strip-lines.ts';
import { type LaneText, laneText, TAB_TYPE, tabLines } from './strip-words.ts';
import type { Strip, StripLabel } from './tape-strip.ts';

/** A label moved less than this, mm, still reads as standing at its tick. */
const UNNOTICED_SHIFT = 0.25;
/** The tab at the end, mm: longer on a strip that has its name nowhere else. */
const TAB = { named: 12, naming: 27 };
const AROUND_LANE = 0.4;

export const tabLength = ({ grid }: SheetRule): number => (grid.lane > 0 ? TAB.named : TAB.naming);

/**
 * Draw one measured strip with its cut lines, its corner at (0, 0); ticks start on the cut line, so the needle meets ink at the
 * very edge.
 */
export function drawStrip(strip: Strip, rule: SheetRule): readonly Item[] {
  const lane = rule.grid.lane === 0 ? null : laneText(strip, takenLane(strip, rule));
  return [
    ...(strip.band === null ? [] : [bandItem(strip.band, rule)]),
    ...cutLines(strip, rule),
    ...strip.lines.flatMap((line) => hairlineItems(line, strip, lane, rule)),
    ...strip.ticks.map((tick) => tickItem(tick, rule)),
    ...strip.labels.flatMap((label) => labelItems(label, rule)),
    ...strip.lines.flatMap((line) => signItems(line, rule)),
    ...(lane === null ? [] : [laneItem(lane, rule)]),
    ...tabItems(strip, rule),
  ];
}

/** Stretches where long numbers or the near branch reach into the lane. */
function takenLane(strip: Strip, rule: SheetRule) {
  const { form, grid } = rule;
  const labels = strip.labels.flatMap((label) => {
    const { to, top, bottom } = labelReach(label, rule);
    if (label.branch === 'far' && to <= form.width - grid.lane) return [];
    return [{ from: top - AROUND_LANE, to: bottom + AROUND_LANE }];
  });
  return strip.band === null
    ? labels
    : [...labels, { from: strip.band.top, to: strip.band.bottom + AROUND_LANE }];
}

function labelItems(label: StripLabel, rule: SheetRule): readonly Item[] {
  const { from } = labelReach(label, rule);
  const letters = {
    kind: 'text',
    role: 'label',
    text: label.text,
    size: label.size,
    colour: 'ink',
    weight: weightOf(label.rank, label.branch),
  } as const;
  const text: Item = isSideways(label.branch, rule)
    ? {
        ...letters,
        x: across(from + capHeight * label.size, label.branch, rule),
        y: label.middle,
        anchor: 'middle',
        rotation: turnAlong(rule),
      }
    : {
        ...letters,
        x: across(from, label.branch, rule),
        y: label.middle + (capHeight * label.size) / 2,
        anchor: anchorAt(label.branch, rule),
      };
  if (Math.abs(label.middle - label.at) <= UNNOTICED_SHIFT) return [text];
  const leader: Item = {
    kind: 'line',
    role: 'leader',
    from: { x: across(afterTicks(label.branch, rule), label.branch, rule), y: label.at },
    to: { x: across(from - 0.1, label.branch, rule), y: label.middle },
    colour: 'slate',
    stroke: 0.08,
  };
  return [leader, text];
}

const laneItem = ({ text, middle }: LaneText, rule: SheetRule): Item => ({
  kind: 'text',
  role: 'lane',
  // Descenders reach 0.24 em below the baseline.
  x: across(rule.form.width - LANE.inset - 0.24 * LANE.size, 'far', rule),
  y: middle,
  text,
  size: LANE.size,
  colour: 'ink',
  anchor: 'middle',
  rotation: turnAlong(rule),
});

function tabItems(strip: Strip, rule: SheetRule): readonly Item[] {
  const { width } = rule.form;
  const length = tabLength(rule);
  const lines = tabLines(strip, { width, length });
  const first = width / 2 - ((lines.length - 1) * TAB_TYPE.line) / 2 + 0.35 * TAB_TYPE.size;
  return lines.map((text, i) => ({
    kind: 'text',
    role: i === 0 ? 'name' : 'tab',
    x: first + i * TAB_TYPE.line,
    y: strip.height + length / 2,
    text,
    size: TAB_TYPE.size,
    colour: 'slate',
    anchor: 'middle',
    rotation: -90,
  }));
}

function cutLines(strip: Strip, rule: SheetRule): readonly Item[] {
  const right = rule.form.width;
  const fold = strip.height;
  const bottom = fold + tabLength(rule);
  const line = (role: 'cut' | 'fold', [x1, y1, x2, y2]: readonly [number, number, number, number]): Item => ({
    kind: 'line',
    role,
    from: { x: x1, y: y1 },
    to: { x: x2, y: y2 },
    colour: 'slate',
    stroke: 0.1,
    dash: role === 'cut' ? [0.7, 0.9] : [0.2, 0.5],
  });
  return [
    line('cut', [0, 0, 0, bottom]),
    line('cut', [right, 0, right, bottom]),
    line('cut', [0, 0, right, 0]),
    line('cut', [0, bottom, right, bottom]),
    line('fold', [0, fold, right, fold]),
  ];
}
