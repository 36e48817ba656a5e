import type { TextItem } from '../../../src/documents/page/drawing.ts';
import { unitsPerEm } from '../../../src/documents/page/font-advances.ts';
import { textWidth } from '../../../src/documents/page/text-measure.ts';

/** How far ink reaches above and below the baseline, in ems. */
export interface InkReach {
  readonly above: number;
  readonly below: number;
}

/**
 * The tallest and deepest ink a line of text can have, in ems, by what kind of characters it holds.
 * @source glyph boxes of the same font files: digits -29 to 1520, ASCII -483 to 1565, the rest of the table -483 to 1907
 */
export function inkReach(text: string): InkReach {
  if (/^\d*$/.test(text)) return { above: 1520 / unitsPerEm, below: 29 / unitsPerEm };
  if (/^[ -~]*$/.test(text)) return { above: 1565 / unitsPerEm, below: 483 / unitsPerEm };
  return { above: 1907 / unitsPerEm, below: 483 / unitsPerEm };
}

/** An upright rectangle on the page, mm. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The upright rectangle that holds a text's ink, turned or not. */
export function textBox(item: TextItem): Box {
  const width = textWidth(item.text, item.size, item.weight);
  const start = { start: 0, middle: -width / 2, end: -width }[item.anchor ?? 'start'];
  const reach = inkReach(item.text);
  const turn = ((item.rotation ?? 0) * Math.PI) / 180;
  const corners = [start, start + width].flatMap((along) =>
    [-reach.above * item.size, reach.below * item.size].map((down) => ({
      x: item.x + along * Math.cos(turn) - down * Math.sin(turn),
      y: item.y + along * Math.sin(turn) + down * Math.cos(turn),
    })),
  );
  return {
    left: Math.min(...corners.map(({ x }) => x)),
    right: Math.max(...corners.map(({ x }) => x)),
    top: Math.min(...corners.map(({ y }) => y)),
    bottom: Math.max(...corners.map(({ y }) => y)),
  };
}
