import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Drawing, type Item, moved, type PaperName, paperSizes } from './drawing.ts';
import { capHeight, textWidth } from './text-measure.ts';
import { shortenedText } from './wrap-text.ts';

/**
 * A card for a pocket, mm.
 * @source ISO/IEC 7810:2019, size ID-1: 85.60 mm x 53.98 mm (from memory)
 */
export const POCKET = { width: 85.6, height: 54 };

/** One side of a card: one purpose, in digits that are read at arm's length. */
export interface PocketFace {
  readonly title: string;
  /** Over each column, its unit with it. */
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** In small type at the foot. */
  readonly foot: string;
}

/** Digits 3 mm high. */
const DIGITS = { em: 3 / capHeight, line: 4.5 };
const HEAD = { size: 2, line: 3 };
const TITLE = { size: 2.3, line: 3.4 };
const FOOT = { size: 1.7, line: 2.4 };
const INSET = 2.2;
const BETWEEN_COLUMNS = 2.4;
const BETWEEN_BLOCKS = 4;
const MARGIN = 10;
const BETWEEN_CARDS = 5;

/** How many rows stand under one another. */
const POCKET_ROWS = Math.floor(
  (POCKET.height - 2 * INSET - TITLE.line - HEAD.line - FOOT.line) / DIGITS.line,
);

/** How wide each column has to be, and all of them. */
function columnWidths({ heads, rows }: PocketFace): readonly number[] {
  return heads.map((head, i) =>
    rows
      .map((row) => textWidth(at(row, i), DIGITS.em, i === 0 ? 'bold' : 'regular'))
      .reduce((a, b) => Math.max(a, b), textWidth(head, HEAD.size)),
  );
}

const blockWidth = (face: PocketFace): number =>
  columnWidths(face).reduce((sum, width) => sum + width, 0) + (face.heads.length - 1) * BETWEEN_COLUMNS;

/** How many rows a side holds, in as many blocks beside one another as its width has room for. */
export const pocketRoom = (face: PocketFace): number =>
  POCKET_ROWS * Math.floor((POCKET.width - 2 * INSET + BETWEEN_BLOCKS) / (blockWidth(face) + BETWEEN_BLOCKS));

/**
 * Cards with both sides beside one another, to cut out and fold, as many as a sheet holds.
 *
 * @throws DomainError when a side has more rows than it holds
 */
export function layOutPocket(front: PocketFace, back: PocketFace, paper: PaperName): Drawing {
  const size = paperSizes[paper];
  const card = [
    ...faceItems(front),
    ...faceItems(back).map((item) => moved(item, POCKET.width, 0)),
    ...edges(),
  ];
  const count = Math.floor(
    (size.height - 2 * MARGIN - NOTE_HEIGHT + BETWEEN_CARDS) / (POCKET.height + BETWEEN_CARDS),
  );
  const left = (size.width - 2 * POCKET.width) / 2;
  return {
    pages: [
      {
        ...size,
        items: [
          {
            kind: 'text',
            role: 'print-note',
            x: left,
            y: MARGIN + 2,
            text:
              'Print at 100 % ("actual size"). Cut along the dashes, fold along the dots: ' +
              `${POCKET.width} mm x ${POCKET.height} mm.`,
            size: 2.4,
            colour: 'slate',
          },
          ...Array.from({ length: count }, (_, i) =>
            card.map((item) => moved(item, left, MARGIN + NOTE_HEIGHT + i * (POCKET.height + BETWEEN_CARDS))),
          ).flat(),
        ],
      },
    ],
  };
}
const NOTE_HEIGHT = 5;

function faceItems(face: PocketFace): readonly Item[] {
  const { title, heads, rows, foot } = face;
  const room = pocketRoom(face);
  if (rows.length > room) throw new DomainError('rows on a side of the card', rows.length, `at most ${room}`);
  const widths = columnWidths(face);
  const width = POCKET.width - 2 * INSET;
  const small = (text: string, y: number, of: { readonly size: number }, role: string): Item => ({
    kind: 'text',
    role,
    x: INSET,
    y,
    text: shortenedText(text, { width, size: of.size }),
    size: of.size,
    colour: 'slate',
  });
  const blocks = Math.ceil(rows.length / POCKET_ROWS);
  return [
    small(title, INSET + 0.8 * TITLE.size, TITLE, 'card-title'),
    small(foot, POCKET.height - INSET, FOOT, 'card-foot'),
    ...Array.from({ length: blocks }, (_, block) => {
      const left = INSET + block * (blockWidth(face) + BETWEEN_BLOCKS);
      const rightOf = (column: number) =>
        left + widths.slice(0, column + 1).reduce((sum, each) => sum + each, 0) + column * BETWEEN_COLUMNS;
      const top = INSET + TITLE.line;
      return [
        ...heads.map(
          (text, i): Item => ({
            kind: 'text',
            role: 'card-head',
            x: rightOf(i),
            y: top + 0.8 * HEAD.size,
            text,
            size: HEAD.size,
            colour: 'slate',
            anchor: 'end',
          }),
        ),
        ...rows.slice(block * POCKET_ROWS, (block + 1) * POCKET_ROWS).flatMap((row, k) =>
          row.map(
            (text, i): Item => ({
              kind: 'text',
              role: 'card-number',
              x: rightOf(i),
              y: top + HEAD.line + k * DIGITS.line + capHeight * DIGITS.em,
              text,
              size: DIGITS.em,
              colour: 'ink',
              weight: i === 0 ? 'bold' : 'regular',
              anchor: 'end',
            }),
          ),
        ),
      ];
    }).flat(),
  ];
}

function edges(): readonly Item[] {
  const [right, bottom] = [2 * POCKET.width, POCKET.height];
  const line = (role: 'cut' | 'fold', [x1, y1, x2, y2]: readonly [number, number, number, number]): Item => ({
    kind: 'line',
    role,
    from: { x: x1, y: y1 },
    to: { x: x2, y: y2 },
    colour: 'slate',
    stroke: 0.1,
    dash: role === 'cut' ? [0.7, 0.9] : [0.2, 0.6],
  });
  return [
    line('cut', [0, 0, right, 0]),
    line('cut', [0, bottom, right, bottom]),
    line('cut', [0, 0, 0, bottom]),
    line('cut', [right, 0, right, bottom]),
    line('fold', [POCKET.width, 0, POCKET.width, bottom]),
  ];
}
