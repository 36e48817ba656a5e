import { at } from '../../numerics/at.ts';

/** Dots of a braille cell by column and row, as bits of the character's offset. @source Unicode Standard, block U+2800 */
const DOT_BITS = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const;
const FIRST_BRAILLE = 0x2800;
const DOTS_ACROSS = 2;
const DOTS_DOWN = 4;

/** Characters on which lines are drawn as dots, two across and four down to a character. */
export interface BrailleCanvas {
  readonly width: number;
  readonly height: number;
  /** Set a dot by its column and row from the top left; dots outside are left out. */
  readonly dot: (column: number, row: number) => void;
  /** The character at a place: braille where dots are set, else undefined. */
  readonly at: (x: number, y: number) => string | undefined;
}

/** An empty canvas of `width` by `height` characters. */
export function brailleCanvas(width: number, height: number): BrailleCanvas {
  const cells = new Array<number>(width * height).fill(0);
  return {
    width,
    height,
    dot: (column, row) => {
      const x = Math.floor(column / DOTS_ACROSS);
      const y = Math.floor(row / DOTS_DOWN);
      if (x < 0 || x >= width || y < 0 || y >= height) return;
      const bit = at(DOT_BITS[column % DOTS_ACROSS === 0 ? 0 : 1], row % DOTS_DOWN);
      cells[y * width + x] = at(cells, y * width + x) | bit;
    },
    at: (x, y) => {
      const bits = at(cells, y * width + x);
      return bits === 0 ? undefined : String.fromCodePoint(FIRST_BRAILLE + bits);
    },
  };
}

/** The dots of a straight line between two dots, ends included, evenly spaced along its longer side. */
export function dotsBetween(
  from: readonly [column: number, row: number],
  to: readonly [column: number, row: number],
): readonly (readonly [column: number, row: number])[] {
  const count = Math.max(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]));
  if (count === 0) return [from];
  return Array.from({ length: count + 1 }, (_, i) => [
    Math.round(from[0] + ((to[0] - from[0]) * i) / count),
    Math.round(from[1] + ((to[1] - from[1]) * i) / count),
  ]);
}
