import { typeset } from '../table/number-text.ts';
import type { Colour, Item, Weight } from './drawing.ts';
import { wrapText } from './wrap-text.ts';

/** Items that stand below one another; `bottom` is where the next block may begin, mm. */
export interface Block {
  readonly items: readonly Item[];
  readonly bottom: number;
}

export interface TextStyle {
  readonly role: string;
  /** The em, mm. */
  readonly size: number;
  readonly weight?: Weight;
  readonly colour?: Colour;
}

export interface TextPlace {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

/** Baseline to baseline, in ems: open enough for a tired reader. */
export const LEADING = 1.45;
/** From the top of a line to its baseline, in ems: half of the white space stands above the letters. */
const TO_BASELINE = 1.05;

/** Texts as lines no wider than the place, each text on a line of its own. */
export function textBlock(texts: readonly string[], place: TextPlace, style: TextStyle): Block {
  const weight = style.weight ?? 'regular';
  const lines = texts.flatMap((text) =>
    wrapText(typeset(text), { width: place.width, size: style.size, weight }),
  );
  return {
    items: lines.map(
      (text, i): Item => ({
        kind: 'text',
        role: style.role,
        x: place.left,
        y: place.top + (i * LEADING + TO_BASELINE) * style.size,
        text,
        size: style.size,
        weight,
        colour: style.colour ?? 'ink',
      }),
    ),
    bottom: place.top + lines.length * LEADING * style.size,
  };
}

/** A page's title with its lines of detail. */
export function titleBlock(title: string, subtitle: readonly string[], place: TextPlace): Block {
  const head = textBlock([title], place, { role: 'title', size: 5.2, weight: 'bold' });
  const detail = textBlock(
    subtitle,
    { ...place, top: head.bottom },
    { role: 'subtitle', size: 2.8, colour: 'slate' },
  );
  return { items: [...head.items, ...detail.items], bottom: detail.bottom };
}

const CAUTION_WORD = 15;

/** Cautions with the word before them; nothing at all when there are none. */
export function cautionBlock(cautions: readonly string[], place: TextPlace): Block {
  if (cautions.length === 0) return { items: [], bottom: place.top };
  const word = textBlock(['Caution'], place, { role: 'caution', size: 2.5, weight: 'bold' });
  const body = textBlock(
    cautions,
    { ...place, left: place.left + CAUTION_WORD, width: place.width - CAUTION_WORD },
    { role: 'caution', size: 2.5 },
  );
  return { items: [...word.items, ...body.items], bottom: body.bottom };
}
