import type { TextItem } from '../../../src/documents/page/drawing.ts';
import { inkReach, textWidth } from '../../../src/documents/page/text-measure.ts';

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
