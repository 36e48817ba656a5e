import type { Item } from '../page/drawing.ts';
import { capHeight } from '../page/text-measure.ts';
import { type SheetRule, weightOf } from './sheet-rule.ts';
import { LANE } from './strip-grid.ts';
import { afterTicks, bandItem, hairlineItems, signItems, tickItem } from './strip-lines.ts';
import { across, anchorAt, isSideways, labelReach, type StripPlace, turnAlong } from './strip-place.ts';
import { type LaneText, laneText, TAB_TYPE, tabLines } from './strip-words.ts';
import type { Strip, StripLabel } from './tape-strip.ts';

/** A label moved less than this, mm, still reads as standing at its tick. */
const UNNOTICED_SHIFT = 0.25;
/** The tab at the end, mm: longer on a strip that has its name nowhere else. */
const TAB = { named: 12, naming: 27 };
const AROUND_LANE = 0.4;

export const tabLength = ({ grid }: SheetRule): number => (grid.lane > 0 ? TAB.named : TAB.naming);

/** Draw one measured strip with its cut lines; ticks start on the cut line, so the needle meets ink at the very edge. */
export function drawStrip(strip: Strip, place: StripPlace): readonly Item[] {
  const lane = place.rule.grid.lane === 0 ? null : laneText(strip, takenLane(strip, place));
  return [
    ...(strip.band === null ? [] : [bandItem(strip.band, place)]),
    ...cutLines(strip, place),
    ...strip.lines.flatMap((line) => hairlineItems(line, strip, lane, place)),
    ...strip.ticks.map((tick) => tickItem(tick, place)),
    ...strip.labels.flatMap((label) => labelItems(label, place)),
    ...strip.lines.flatMap((line) => signItems(line, place)),
    ...(lane === null ? [] : [laneItem(lane, place)]),
    ...tabItems(strip, place),
  ];
}

/** Stretches where long numbers or the near branch reach into the lane. */
function takenLane(strip: Strip, place: StripPlace) {
  const { form, grid } = place.rule;
  const labels = strip.labels.flatMap((label) => {
    const { to, top, bottom } = labelReach(label, place);
    if (label.branch === 'far' && to <= form.width - grid.lane) return [];
    return [{ from: top - AROUND_LANE, to: bottom + AROUND_LANE }];
  });
  return strip.band === null
    ? labels
    : [...labels, { from: strip.band.top, to: strip.band.bottom + AROUND_LANE }];
}

function labelItems(label: StripLabel, place: StripPlace): readonly Item[] {
  const { from } = labelReach(label, place);
  const middle = place.y + label.middle;
  const letters = {
    kind: 'text',
    role: 'label',
    text: label.text,
    size: label.size,
    colour: 'ink',
    weight: weightOf(label.rank, label.branch),
  } as const;
  const text: Item = isSideways(label.branch, place)
    ? {
        ...letters,
        x: across(from + capHeight * label.size, label.branch, place),
        y: middle,
        anchor: 'middle',
        rotation: turnAlong(place),
      }
    : {
        ...letters,
        x: across(from, label.branch, place),
        y: middle + (capHeight * label.size) / 2,
        anchor: anchorAt(label.branch, place),
      };
  if (Math.abs(label.middle - label.at) <= UNNOTICED_SHIFT) return [text];
  const leader: Item = {
    kind: 'line',
    role: 'leader',
    from: { x: across(afterTicks(label.branch, place), label.branch, place), y: place.y + label.at },
    to: { x: across(from - 0.1, label.branch, place), y: middle },
    colour: 'slate',
    stroke: 0.08,
  };
  return [leader, text];
}

const laneItem = ({ text, middle }: LaneText, place: StripPlace): Item => ({
  kind: 'text',
  role: 'lane',
  // Descenders reach 0.24 em below the baseline.
  x: across(place.rule.form.width - LANE.inset - 0.24 * LANE.size, 'far', place),
  y: place.y + middle,
  text,
  size: LANE.size,
  colour: 'ink',
  anchor: 'middle',
  rotation: turnAlong(place),
});

function tabItems(strip: Strip, place: StripPlace): readonly Item[] {
  const { width } = place.rule.form;
  const length = tabLength(place.rule);
  const lines = tabLines(strip, { width, length });
  const first = place.x + width / 2 - ((lines.length - 1) * TAB_TYPE.line) / 2 + 0.35 * TAB_TYPE.size;
  return lines.map((text, i) => ({
    kind: 'text',
    role: i === 0 ? 'name' : 'tab',
    x: first + i * TAB_TYPE.line,
    y: place.y + strip.height + length / 2,
    text,
    size: TAB_TYPE.size,
    colour: 'slate',
    anchor: 'middle',
    rotation: -90,
  }));
}

function cutLines(strip: Strip, place: StripPlace): readonly Item[] {
  const right = place.x + place.rule.form.width;
  const fold = place.y + strip.height;
  const bottom = fold + tabLength(place.rule);
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
    line('cut', [place.x, place.y, place.x, bottom]),
    line('cut', [right, place.y, right, bottom]),
    line('cut', [place.x, place.y, right, place.y]),
    line('cut', [place.x, bottom, right, bottom]),
    line('fold', [place.x, fold, right, fold]),
  ];
}
