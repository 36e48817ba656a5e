import type { Item } from './drawing.ts';

const FROM_EDGE = { right: 10, bottom: 6.5 };

/** "2 of 3" in the corner of the sheet; nothing on a document of one page. */
export function pageNumber(
  index: number,
  count: number,
  size: { readonly width: number; readonly height: number },
): readonly Item[] {
  if (count === 1) return [];
  return [
    {
      kind: 'text',
      role: 'page-number',
      x: size.width - FROM_EDGE.right,
      y: size.height - FROM_EDGE.bottom,
      text: `${index + 1} of ${count}`,
      size: 2.4,
      colour: 'slate',
      anchor: 'end',
    },
  ];
}
