/**
 * What every printed document is made of: marks on pages, all in millimetres, origin at the page's top left, x to the
 * right, y down. The renderers add nothing and move nothing, so a test of the drawing is a test of the paper.
 */
export interface Drawing {
  readonly pages: readonly Page[];
}

export interface Page {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  readonly items: readonly PageItem[];
}

export type PageItem = Item | Copy;

/** The same items as on other places of the page, from another corner: so that a renderer works out what is on copies once. */
export interface Copy {
  readonly kind: 'copy';
  /** Of the corner, mm. */
  readonly x: number;
  readonly y: number;
  /** The same list for every copy. */
  readonly of: readonly Item[];
}

export type Item = LineItem | PolylineItem | RectItem | TextItem;

export interface PagePoint {
  readonly x: number;
  readonly y: number;
}

/**
 * A closed palette that survives a black-and-white printer: the greys and the two accents differ in lightness, and no
 * meaning rests on colour alone (series also differ by dash, marks by shape).
 */
export type Colour = 'ink' | 'slate' | 'mist' | 'fog' | 'paper' | 'lake' | 'clay';

export const palette: Readonly<Record<Colour, `#${string}`>> = {
  ink: '#000000',
  slate: '#4f565c',
  mist: '#bfc4c8',
  fog: '#e6e8ea',
  paper: '#ffffff',
  lake: '#12466b',
  clay: '#b4652a',
};

interface Marked {
  /** What the mark is for ("tick", "label", "cut"): a class in SVG, a handle in tests, nothing on paper. */
  readonly role?: string;
}

interface Stroked extends Marked {
  readonly colour: Colour;
  /** Stroke width, mm. */
  readonly stroke: number;
  /** Lengths of ink and gap, mm; solid when absent. */
  readonly dash?: readonly [number, number];
}

export interface LineItem extends Stroked {
  readonly kind: 'line';
  readonly from: PagePoint;
  readonly to: PagePoint;
}

/** A run of straight segments; with `fill` the area is painted too, with `closed` the last point joins the first. */
interface PolylineItem extends Stroked {
  readonly kind: 'polyline';
  readonly points: readonly PagePoint[];
  readonly closed?: boolean;
  readonly fill?: Colour;
}

/** A rectangle by its top left corner; without `fill` only its outline, without `colour` only its area. */
export interface RectItem extends Marked {
  readonly kind: 'rect';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly fill?: Colour;
  readonly outline?: { readonly colour: Colour; readonly stroke: number };
}

export type Weight = 'regular' | 'bold';
type Anchor = 'start' | 'middle' | 'end';

/** One line of text; (x, y) is the anchor on the baseline, `size` the em in mm, `rotation` clockwise about it in degrees. */
export interface TextItem extends Marked {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly colour: Colour;
  readonly anchor?: Anchor;
  readonly weight?: Weight;
  readonly rotation?: number;
}

export type PaperName = 'a4' | 'letter';

/**
 * Sheet sizes in millimetres, portrait.
 * @source ISO 216:2007, A4 = 210 mm x 297 mm; ANSI/ASME Y14.1, size A = 8.5 in x 11 in (both from memory)
 */
export const paperSizes: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** All the items of a page, those of copies in their places. */
export const itemsOf = ({ items }: Pick<Page, 'items'>): readonly Item[] =>
  items.flatMap((item) => (item.kind === 'copy' ? item.of.map((one) => moved(one, item.x, item.y)) : [item]));

/** The same item `dx` to the right and `dy` down. */
export function moved(item: Item, dx: number, dy: number): Item {
  const shift = (p: PagePoint): PagePoint => ({ x: p.x + dx, y: p.y + dy });
  switch (item.kind) {
    case 'line':
      return { ...item, from: shift(item.from), to: shift(item.to) };
    case 'polyline':
      return { ...item, points: item.points.map(shift) };
    case 'rect':
    case 'text':
      return { ...item, ...shift(item) };
  }
}
