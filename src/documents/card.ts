import { type Drawing, type Item, moved, type PaperName, paperSizes } from './drawing.ts';
import { type PageFlow, pageFlow } from './page-flow.ts';
import { pageNumber } from './page-number.ts';
import { plotItems } from './plot.ts';
import type { Plot } from './plot-data.ts';
import type { Table } from './table.ts';
import { drawTable } from './table-drawing.ts';
import { layOutTable, rowsThatFit, type TableLayout, tableHeight } from './table-layout.ts';
import { type Block, cautionBlock, textBlock, titleBlock } from './text-block.ts';

export interface CardContent {
  readonly title: string;
  /** Build, air, date: one line each. */
  readonly subtitle: readonly string[];
  readonly tables: readonly Table[];
  readonly plots: readonly Plot[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

const MARGIN = 10;
const GAP = 7;
const PLOT = { least: 66, height: 62 };
/** A table is not begun at a page's foot for fewer rows than this. */
const FEWEST_ROWS = 4;
const NOTE = { role: 'note', size: 2.5 } as const;

interface PlacedItems {
  readonly page: number;
  readonly items: readonly Item[];
}

/**
 * Tables and plots on a page to carry, with notes and cautions under them; on further pages when one does not hold them.
 *
 * Nothing overlaps; a table longer than a page goes on under a repeated head.
 *
 * @throws DomainError when a number is not finite, a table is too wide for the paper, or a text taller than a page
 */
export function layOutCard(content: CardContent, paper: PaperName): Drawing {
  const size = paperSizes[paper];
  const width = size.width - 2 * MARGIN;
  const title = titleBlock(content.title, content.subtitle, { left: MARGIN, top: MARGIN - 1, width });
  const space = { left: MARGIN, top: MARGIN, right: MARGIN + width, bottom: size.height - MARGIN };
  const flow = pageFlow({ ...space, top: title.bottom + 5 }, space);
  const placed: readonly PlacedItems[] = [
    { page: 0, items: title.items },
    ...content.tables.flatMap((table) =>
      flowTable(flow, layOutTable(table, width), space.bottom - space.top),
    ),
    ...content.plots.map((plot) => flowPlot(flow, plot, (width - GAP) / 2)),
    ...flowText(flow, content, width),
  ];
  const count = flow.pageCount();
  return {
    pages: Array.from({ length: count }, (_, i) => ({
      ...size,
      items: [
        ...placed.filter(({ page }) => page === i).flatMap(({ items }) => items),
        ...pageNumber(i, count, size),
      ],
    })),
  };
}

function flowTable(flow: PageFlow, layout: TableLayout, pageHeight: number): readonly PlacedItems[] {
  const put = (from: number, to: number): PlacedItems => {
    const height = tableHeight(layout, { from, to });
    const spot = flow.place({ least: layout.width, most: layout.width, height, gap: GAP });
    return { page: spot.page, items: drawTable(layout, { from, to }, spot) };
  };
  if (tableHeight(layout, { from: 0, to: layout.rowCount }) <= pageHeight) return [put(0, layout.rowCount)];
  const parts: PlacedItems[] = [];
  for (let from = 0; from < layout.rowCount; ) {
    let rows = rowsThatFit(layout, from, flow.heightLeft(layout.width, GAP));
    if (rows < Math.min(FEWEST_ROWS, layout.rowCount - from)) {
      flow.breakPage();
      rows = Math.max(1, rowsThatFit(layout, from, pageHeight));
    }
    parts.push(put(from, from + rows));
    from += rows;
  }
  return parts;
}

function flowPlot(flow: PageFlow, plot: Plot, most: number): PlacedItems {
  const { page, left, top, width } = flow.place({ ...PLOT, most, gap: GAP });
  return { page, items: plotItems(plot, { x: left, y: top, width, height: PLOT.height }) };
}

function flowText(flow: PageFlow, content: CardContent, width: number): readonly PlacedItems[] {
  const place = { left: 0, top: 0, width };
  const put = (block: Block, gap: number): PlacedItems => {
    const { page, left, top } = flow.place({ least: width, most: width, height: block.bottom, gap });
    return { page, items: block.items.map((item) => moved(item, left, top)) };
  };
  const notes = content.notes.map((note, i) => put(textBlock([note], place, NOTE), i === 0 ? GAP : 1));
  return content.cautions.length === 0 ? notes : [...notes, put(cautionBlock(content.cautions, place), GAP)];
}
