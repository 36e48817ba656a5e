import { at } from '../../numerics/at.ts';
import type { Item, PagePoint } from '../page/drawing.ts';
import { capHeight, textWidth } from '../page/text-measure.ts';
import { shortenedText } from '../page/wrap-text.ts';
import type { Plot } from './plot-data.ts';
import { lineStyle, pointSign } from './series-style.ts';

const TEXT_SIZE = 2.1;
/** From the end of a line to its leader's end, then a short piece of the line with its sign, then the name; mm. */
const LEADER = 3;
const SAMPLE = 5;
const GAP = 0.8;
const BEFORE_NAME = LEADER + SAMPLE + GAP;
/** From name to name, mm. */
const APART = 2.6;
/** Names take at most this share of the plot's width. */
const MOST = 0.42;
/** Signs on one line, and no two lines have them at the same places. */
const SIGNS = 3;

/** A line where it stands on the page. */
interface NamedLine {
  readonly name: string;
  readonly points: readonly PagePoint[];
}

/** The room that the names of lines take at the right of a plot, mm. */
export function endNamesWidth({ series }: Plot, width: number): number {
  const widest = Math.max(
    0,
    ...series.filter(({ kind }) => kind === 'line').map(({ name }) => textWidth(name, TEXT_SIZE)),
  );
  return Math.min(BEFORE_NAME + widest, MOST * width);
}

/**
 * Signs along every line, and at its end its name behind a piece of the line, moved up or down until no two touch. Lines that
 * lie on one another are told apart by it.
 *
 * @param width of the room at the right of the area, as `endNamesWidth` says
 */
export function endNames(
  lines: readonly NamedLine[],
  {
    area,
    width,
  }: { readonly area: { x: number; y: number; width: number; height: number }; readonly width: number },
): readonly Item[] {
  const drawn = lines.map((line, i) => ({ ...line, i })).filter(({ points }) => points.length > 0);
  const right = area.x + area.width;
  const ends = drawn
    .map((line) => ({ ...line, end: at(line.points, line.points.length - 1) }))
    .toSorted((a, b) => a.end.y - b.end.y || a.i - b.i);
  const middles = apartWithin(
    ends.map(({ end }) => end.y),
    area.y,
    area.y + area.height,
  );
  return [
    ...drawn.flatMap(({ i, points }) => signsAlong(i, points, lines.length)),
    ...ends.flatMap(({ name, i, end }, k): readonly Item[] => {
      const y = at(middles, k);
      const [from, to] = [right + LEADER, right + LEADER + SAMPLE];
      return [
        {
          kind: 'line',
          role: 'leader',
          from: { x: end.x + GAP, y: end.y },
          to: { x: from - GAP / 2, y },
          colour: 'slate',
          stroke: 0.08,
        },
        { kind: 'line', role: 'sample', from: { x: from, y }, to: { x: to, y }, ...lineStyle(i) },
        { ...pointSign(i, { x: (from + to) / 2, y }), role: 'sign' },
        {
          kind: 'text',
          role: 'line-name',
          x: to + GAP,
          y: y + (capHeight * TEXT_SIZE) / 2,
          text: shortenedText(name, { size: TEXT_SIZE, width: width - BEFORE_NAME }),
          size: TEXT_SIZE,
          colour: 'ink',
        },
      ];
    }),
  ];
}

/** The signs of one line among `count`: the first of each line a little farther along than that of the line before. */
function signsAlong(i: number, points: readonly PagePoint[], count: number): readonly Item[] {
  return Array.from({ length: SIGNS }, (_, k) => {
    const share = (k + (i + 0.5) / count) / SIGNS;
    const place = share * (points.length - 1);
    const before = at(points, Math.floor(place));
    const after = at(points, Math.min(points.length - 1, Math.floor(place) + 1));
    const part = place - Math.floor(place);
    return {
      ...pointSign(i, {
        x: before.x + part * (after.x - before.x),
        y: before.y + part * (after.y - before.y),
      }),
      role: 'sign',
    };
  });
}

/** Rising places moved until each is clear of the one before, then back until the last is within; as near as they fit. */
function apartWithin(wanted: readonly number[], top: number, bottom: number): readonly number[] {
  const apart = Math.min(APART, (bottom - top) / Math.max(1, wanted.length - 1));
  const down: number[] = [];
  for (const place of wanted) down.push(Math.max(place, (down.at(-1) ?? top - apart) + apart));
  const up: number[] = [];
  for (const place of down.toReversed()) up.unshift(Math.min(place, (up[0] ?? bottom + apart) - apart));
  return up;
}
