import { plotItems } from '../plot/plot.ts';
import type { Plot } from '../plot/plot-data.ts';
import type { Table } from '../table/table.ts';
import { drawTable } from '../table/table-drawing.ts';
import { layOutTable, rowsThatFit, type TableLayout, tableHeight } from '../table/table-layout.ts';
import { type Drawing, type Item, moved, type PaperName, paperSizes } from './drawing.ts';
import { type PageFlow, pageFlow } from './page-flow.ts';
import { pageNumber } from './page-number.ts';
import { type Block, cautionBlock, textBlock, titleBlock } from './text-block.ts';

export interface CardContent {
  readonly title: string;
  /** Build, air, date: one line each. */
  readonly subtitle: readonly string[];
  /** What to know before anything else: a paragraph each. */
  readonly lead?: readonly string[];
  readonly tables: readonly Table[];
  readonly plots: readonly Plot[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

const PAGE_MARGIN = 10;
const BLOCK_GAP = 7;
/** Type of the tables, mm: the largest that leaves all on one page, so that the card can be read at arm's length. */
const LETTERINGS = [3.1, 2.9, 2.7];
const SMALLEST_LETTERING = 2.5;
/** A plot lower than this cannot be read off; higher is no use. */
const PLOT_HEIGHT = { least: 58, most: 90 };
/** A table is not begun at a page's foot for fewer rows than this. */
const FEWEST_ROWS = 4;
const LEAD = { role: 'lead', size: 3.1 } as const;
const NOTE = { role: 'note', size: 2.6 } as const;
/** Notes stand beside the last table when it leaves them a column of at least this width, mm. */
const NOTES_LEAST = 48;

interface PlacedItems {
  readonly page: number;
  readonly items: readonly Item[];
}

/**
 * Tables and plots on a page to carry, with notes beside or under them and cautions at the end; in the largest type that
 * one page holds, and on further pages when none does.
 *
 * Nothing overlaps; a table longer than a page goes on under a repeated head. No plot stands on a page without rows or notes:
 * where one would, the plots are left out and the rows alone say how many pages there are.
 *
 * @throws DomainError when a number is not finite, a table is too wide for the paper, or a text taller than a page
 */
export function layOutCard(content: CardContent, paper: PaperName): Drawing {
  for (const lettering of LETTERINGS) {
    const { drawing } = layOutAt(content, paper, lettering);
    if (drawing.pages.length === 1) return drawing;
  }
  const whole = layOutAt(content, paper, SMALLEST_LETTERING);
  return whole.hasLonePlot ? withoutPlots(content, paper) : whole.drawing;
}

/** In the largest type that takes no more pages than the smallest. */
function withoutPlots(content: CardContent, paper: PaperName): Drawing {
  const at = (lettering: number): Drawing => layOutAt({ ...content, plots: [] }, paper, lettering).drawing;
  const least = at(SMALLEST_LETTERING);
  return LETTERINGS.map(at).find(({ pages }) => pages.length === least.pages.length) ?? least;
}

interface LaidOut {
  readonly drawing: Drawing;
  /** Whether a plot stands on a page that has neither rows nor notes, of a card that has rows. */
  readonly hasLonePlot: boolean;
}

function layOutAt(content: CardContent, paper: PaperName, lettering: number): LaidOut {
  const size = paperSizes[paper];
  const width = size.width - 2 * PAGE_MARGIN;
  const head = headBlock(content, width);
  const space = {
    left: PAGE_MARGIN,
    top: PAGE_MARGIN,
    right: PAGE_MARGIN + width,
    bottom: size.height - PAGE_MARGIN,
  };
  const flow = pageFlow({ ...space, top: head.bottom + 5 }, space);
  const tables = content.tables.map((table) => layOutTable(table, width, lettering));
  const foot = cautionBlock(content.cautions, { left: 0, top: 0, width });
  const rows = tables.flatMap((layout) => flowTable(flow, layout, space.bottom - space.top));
  const notes = flowNotes(flow, content.notes, tables.at(-1), width);
  const plots = flowPlots(flow, content.plots, width, foot.bottom === 0 ? 0 : foot.bottom + BLOCK_GAP);
  const placed: readonly PlacedItems[] = [
    { page: 0, items: head.items },
    ...rows,
    ...notes,
    ...plots,
    ...(foot.bottom === 0 ? [] : [flowBlock(flow, foot, width)]),
  ];
  const count = flow.pageCount();
  const worded = new Set([...rows, ...notes].map(({ page }) => page));
  return {
    hasLonePlot: rows.length > 0 && plots.some(({ page }) => !worded.has(page)),
    drawing: {
      pages: Array.from({ length: count }, (_, i) => ({
        ...size,
        items: [
          ...placed.filter(({ page }) => page === i).flatMap(({ items }) => items),
          ...pageNumber(i, count, size),
        ],
      })),
    },
  };
}

function headBlock({ title, subtitle, lead = [] }: CardContent, width: number): Block {
  const place = { left: PAGE_MARGIN, width };
  const head = titleBlock(title, subtitle, { ...place, top: PAGE_MARGIN - 1 });
  if (lead.length === 0) return head;
  const words = textBlock(lead, { ...place, top: head.bottom + 3 }, LEAD);
  return { items: [...head.items, ...words.items], bottom: words.bottom };
}

function flowTable(flow: PageFlow, layout: TableLayout, pageHeight: number): readonly PlacedItems[] {
  const put = (from: number, to: number): PlacedItems => {
    const height = tableHeight(layout, { from, to });
    const spot = flow.place({ least: layout.width, most: layout.width, height, gap: BLOCK_GAP });
    return { page: spot.page, items: drawTable(layout, { from, to }, spot) };
  };
  if (tableHeight(layout, { from: 0, to: layout.rowCount }) <= pageHeight) return [put(0, layout.rowCount)];
  const parts: PlacedItems[] = [];
  for (let from = 0; from < layout.rowCount; ) {
    let rows = rowsThatFit(layout, from, flow.heightLeft(layout.width, BLOCK_GAP));
    if (rows < Math.min(FEWEST_ROWS, layout.rowCount - from)) {
      flow.breakPage();
      rows = Math.max(1, rowsThatFit(layout, from, pageHeight));
    }
    parts.push(put(from, from + rows));
    from += rows;
  }
  return parts;
}

function flowNotes(
  flow: PageFlow,
  notes: readonly string[],
  beside: TableLayout | undefined,
  pageWidth: number,
): readonly PlacedItems[] {
  if (notes.length === 0) return [];
  const room = beside === undefined ? pageWidth : pageWidth - BLOCK_GAP - beside.width;
  const width = room < NOTES_LEAST ? pageWidth : room;
  return [flowBlock(flow, paragraphs(notes, width), width)];
}

/** Texts with a little space between them. */
function paragraphs(texts: readonly string[], width: number): Block {
  const items: Item[] = [];
  let bottom = 0;
  for (const text of texts) {
    const block = textBlock([text], { left: 0, top: bottom === 0 ? 0 : bottom + 1, width }, NOTE);
    items.push(...block.items);
    bottom = block.bottom;
  }
  return { items, bottom };
}

function flowBlock(flow: PageFlow, block: Block, width: number): PlacedItems {
  const { page, left, top } = flow.place({ least: width, most: width, height: block.bottom, gap: BLOCK_GAP });
  return { page, items: block.items.map((item) => moved(item, left, top)) };
}

/** Plots in the room that tables and the foot leave: one under another when that leaves each its height, else in pairs. */
function flowPlots(
  flow: PageFlow,
  plots: readonly Plot[],
  pageWidth: number,
  foot: number,
): readonly PlacedItems[] {
  const room = flow.heightLeft(pageWidth, BLOCK_GAP) - foot;
  const heightOf = (rows: number): number => (room - (rows - 1) * BLOCK_GAP) / rows;
  const columns = heightOf(plots.length) >= PLOT_HEIGHT.least ? 1 : 2;
  const rows = Math.ceil(plots.length / columns);
  const height = Math.max(PLOT_HEIGHT.least, Math.min(PLOT_HEIGHT.most, heightOf(rows)));
  const width = (pageWidth - (columns - 1) * BLOCK_GAP) / columns;
  return plots.map((plot) => {
    const { page, left, top } = flow.place({ least: width, most: width, height, gap: BLOCK_GAP });
    return { page, items: plotItems(plot, { x: left, y: top, width, height }) };
  });
}
