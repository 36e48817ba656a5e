import { DomainError } from '../../quantities/domain-error.ts';

/** Where blocks may stand on a page, mm. */
export interface Space {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

interface BlockWish {
  /** Between these widths, as wide as there is room for. */
  readonly least: number;
  readonly most: number;
  readonly height: number;
  /** Clear space to the block before, mm. */
  readonly gap: number;
}

interface Spot {
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

/** Pages filled block by block: below the last block while a taller neighbour leaves room, then beside it, then below both. */
export interface PageFlow {
  /** @throws DomainError when the block is larger than an empty page */
  readonly place: (wish: BlockWish) => Spot;
  /** The tallest block of this width that still finds a place on this page, mm. */
  readonly heightLeft: (width: number, gap: number) => number;
  readonly breakPage: () => void;
  readonly pageCount: () => number;
}

/** Sums of heights differ in their last digits; a block over the edge by less than this still fits, mm. */
const TOUCHING = 1e-6;

interface Column {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
}

const fits = (end: number, limit: number) => end <= limit + TOUCHING;

/** A flow of pages; the first may have less room than the others, under its title. */
export function pageFlow(first: Space, others: Space): PageFlow {
  let page = 0;
  let space = first;
  let shelf = { top: first.top, bottom: first.top };
  let column: Column | undefined;

  const below = (gap: number) => (column === undefined ? shelf.bottom : shelf.bottom + gap);
  const stand = (left: number, top: number, wish: BlockWish): Spot => {
    const width = Math.min(wish.most, space.right - left);
    const bottom = top + wish.height;
    column = { left, right: Math.max(left + width, column?.left === left ? column.right : 0), bottom };
    shelf = { top: shelf.top, bottom: Math.max(shelf.bottom, bottom) };
    return { page, left, top, width };
  };
  const breakPage = () => {
    page += 1;
    space = others;
    shelf = { top: others.top, bottom: others.top };
    column = undefined;
  };
  const place = (wish: BlockWish): Spot => {
    if (!fits(others.top + wish.height, others.bottom) || !fits(others.left + wish.least, others.right))
      throw new DomainError(
        'the height of a block on a page (mm)',
        wish.height,
        `at most ${Math.floor(others.bottom - others.top)}`,
      );
    if (column !== undefined) {
      const under = column.bottom + wish.gap;
      if (fits(under + wish.height, shelf.bottom) && fits(column.left + wish.least, space.right))
        return stand(column.left, under, wish);
      const beside = column.right + wish.gap;
      if (fits(beside + wish.least, space.right) && fits(shelf.top + wish.height, space.bottom))
        return stand(beside, shelf.top, wish);
    }
    const top = below(wish.gap);
    if (!fits(top + wish.height, space.bottom)) {
      breakPage();
      return place(wish);
    }
    shelf = { top, bottom: top };
    column = undefined;
    return stand(space.left, top, wish);
  };
  const heightLeft = (width: number, gap: number) => {
    const hasRoomBeside = column !== undefined && fits(column.right + gap + width, space.right);
    return space.bottom - (hasRoomBeside ? shelf.top : below(gap));
  };
  return { place, heightLeft, breakPage, pageCount: () => page + 1 };
}
