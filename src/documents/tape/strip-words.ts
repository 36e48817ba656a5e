import { textWidth } from '../page/text-measure.ts';
import { shortenedText, wrapText } from '../page/wrap-text.ts';
import { LANE } from './strip-grid.ts';
import type { Strip } from './tape-strip.ts';

const BETWEEN = ' · ';
/** Shorter stretches, mm, have no room for a name. */
const SHORTEST_LANE = 14;
const LANE_ENDS = 0.8;
/** A title cut shorter than this, mm, no longer names anything. */
const SHORTEST_TITLE = 7;

export interface LaneText {
  readonly text: string;
  /** The middle of the text, mm along the strip. */
  readonly middle: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The name of a strip in the free stretch beside its numbers: long numbers and the near branch take the lane where they stand.
 *
 * @param taken stretches of the lane that something else stands on
 */
export function laneText(
  strip: Strip,
  taken: readonly { readonly from: number; readonly to: number }[],
): LaneText | null {
  const ends = [
    { from: Number.NEGATIVE_INFINITY, to: LANE_ENDS },
    ...taken,
    { from: strip.height - LANE_ENDS, to: Number.POSITIVE_INFINITY },
  ].toSorted((a, b) => a.from - b.from);
  let [best, reached]: [{ from: number; to: number }, number] = [{ from: 0, to: 0 }, LANE_ENDS];
  for (const { from, to } of ends) {
    if (from - reached > best.to - best.from) best = { from: reached, to: from };
    reached = Math.max(reached, to);
  }
  const width = best.to - best.from;
  if (width < SHORTEST_LANE) return null;
  const [first = '', ...rest] = strip.along;
  const tail = [...rest, strip.unit].map((part) => BETWEEN + part).join('');
  const room = width - textWidth(tail, LANE.size);
  const text =
    room < SHORTEST_TITLE
      ? shortenedText(first + tail, { width, size: LANE.size })
      : shortenedText(first, { width: room, size: LANE.size }) + tail;
  const middle = (best.from + best.to) / 2;
  const half = textWidth(text, LANE.size) / 2;
  return { text, middle, from: middle - half, to: middle + half };
}

export const TAB_TYPE = { size: 1.35, line: 1.75 };
const TAB_MARGIN = 0.8;

/** The lines on the tab, as many as stand beside one another on its width. */
export function tabLines(
  strip: Strip,
  { width, length }: { readonly width: number; readonly length: number },
): readonly string[] {
  const most = Math.max(1, Math.floor((width - TAB_MARGIN) / TAB_TYPE.line));
  const space = { width: length - 2 * TAB_MARGIN, size: TAB_TYPE.size };
  const lines = wrapText([strip.tab, ...strip.along, strip.unit].join(', '), space);
  const kept = lines.slice(0, most);
  return lines.length <= most
    ? kept
    : [...kept.slice(0, -1), shortenedText(lines.slice(most - 1).join(' '), space)];
}
