import type { Weight } from './drawing.ts';
import { advances, unitsPerEm } from './font-advances.ts';

const tables: Readonly<Record<Weight, ReadonlyMap<string, number>>> = {
  regular: advanceTable('regular'),
  bold: advanceTable('bold'),
};

function advanceTable(weight: Weight): ReadonlyMap<string, number> {
  return new Map(
    advances[weight].flatMap(([advance, characters]) =>
      Array.from(characters, (character): [string, number] => [character, advance / unitsPerEm]),
    ),
  );
}

/** A character outside the table is taken as wide as the em: wider than all but a few glyphs of the font. */
const UNKNOWN_ADVANCE = 1;

/**
 * The width of one line of text in DejaVu Sans Condensed, without kerning (both renderers switch it off).
 *
 *   w = size · Σ advance / em
 *
 * @param size the em, in the unit wanted for the width
 * @returns width in the unit of `size`; exact for the characters of font-advances.ts, otherwise an estimate
 */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
  const table = tables[weight];
  let ems = 0;
  for (const character of text) ems += table.get(character) ?? UNKNOWN_ADVANCE;
  return size * ems;
}

/** Height of a capital or a digit above the baseline, in ems. @source the same font files: 1493 of 2048 units */
export const capHeight = 1493 / unitsPerEm;
