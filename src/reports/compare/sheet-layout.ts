import type { Fact } from '../../advice/builds/build-readings.ts';
import type { BuildCurve, Comparison } from '../../advice/builds/comparison.ts';
import { type Drawing, type Item, moved, type PaperName, paperSizes } from '../../documents/page/drawing.ts';
import { type Block, cautionBlock, textBlock, titleBlock } from '../../documents/page/text-block.ts';
import { plotItems } from '../../documents/plot/plot.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import type { Table } from '../../documents/table/table.ts';
import { drawTable } from '../../documents/table/table-drawing.ts';
import { layOutTable, tableHeight } from '../../documents/table/table-layout.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { sideBySide } from './build-tables.ts';
import { decisionTable } from './difference-tables.ts';
import { comparisonPlots } from './plots.ts';

export interface ComparisonContent {
  readonly comparison: Comparison;
  /** The same builds at ranges close enough for smooth curves. */
  readonly curves: readonly BuildCurve[];
  readonly units: DisplayUnits;
  readonly title: string;
  readonly subtitle: readonly string[];
  /** Which build to choose for what. */
  readonly choice: string;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/** What a person at a counter can act on. */
const TOLD: readonly Fact[] = [
  'mass',
  'frontOfCentre',
  'massPerDraw',
  'launchSpeed',
  'launchEnergy',
  'launchMomentum',
  'dragCoefficient',
  'spinPerMetre',
  'staticMargin',
  'swingWavelength',
];

const MARGIN = 10;
const GAP = 6;
const NOTE = { role: 'note', size: 2.4, colour: 'slate' } as const;
const CHOICE = { role: 'choice', size: 3, weight: 'bold' } as const;
/** A row of plots lower than this cannot be read off; higher is no use. */
const PLOT_HEIGHT = { least: 44, most: 66 };

/**
 * One page: the builds beside one another, what differs for certain, and their paths, speeds, energies and drifts overlaid.
 * Words stand at the foot; the plots take what room is left, in two rows or, without the drift, in one.
 *
 * @throws DomainError when there are more builds than the page has room for
 */
export function layOutComparison(content: ComparisonContent, paper: PaperName): Drawing {
  const { comparison, curves, units } = content;
  const { questions, base } = comparison;
  const { width: paperWidth, height } = paperSizes[paper];
  const width = paperWidth - 2 * MARGIN;
  const place = { left: MARGIN, width };
  const title = titleBlock(content.title, content.subtitle, { ...place, top: MARGIN - 1 });
  const choice = textBlock([content.choice], { ...place, top: title.bottom + 1 }, CHOICE);
  const facts = tableBlock(sideBySide(comparison, TOLD, units), { ...place, top: choice.bottom + 3 });
  const middle = Math.floor(questions.ranges.length / 2);
  const decision = tableBlock(decisionTable(comparison, middle, units), {
    ...place,
    top: facts.bottom + GAP,
  });
  const foot = footBlock(content, { ...place, top: 0 });
  const footTop = height - MARGIN - foot.bottom;
  const plots = comparisonPlots(curves, base.build.rig.zeroRange, units);
  const room = { x: MARGIN, y: decision.bottom + GAP, width, height: footTop - GAP - decision.bottom - GAP };
  return {
    pages: [
      {
        width: paperWidth,
        height,
        items: [
          ...title.items,
          ...choice.items,
          ...facts.items,
          ...decision.items,
          ...plotGrid(plots, room),
          ...foot.items.map((item) => moved(item, 0, footTop)),
        ],
      },
    ],
  };
}

interface Place {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

function tableBlock(table: Table, { left, top, width }: Place): Block {
  const layout = layOutTable(table, width);
  const part = { from: 0, to: layout.rowCount };
  return { items: drawTable(layout, part, { left, top }), bottom: top + tableHeight(layout, part) };
}

function footBlock({ notes, cautions }: ComparisonContent, place: Place): Block {
  const words = textBlock([notes.join(' ')], place, NOTE);
  if (cautions.length === 0) return words;
  const warning = cautionBlock(cautions, { ...place, top: words.bottom + 2 });
  return { items: [...words.items, ...warning.items], bottom: warning.bottom };
}

interface Room {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function plotGrid(plots: readonly Plot[], room: Room): readonly Item[] {
  const twoRows = (room.height - GAP) / 2;
  if (twoRows >= PLOT_HEIGHT.least) return plotRows(plots, 2, twoRows, room);
  if (room.height < PLOT_HEIGHT.least)
    throw new DomainError(
      'room for plots on the page (mm)',
      Math.floor(room.height),
      `${PLOT_HEIGHT.least} or more; compare fewer builds`,
    );
  return plotRows(plots.slice(0, 3), 3, room.height, room);
}

function plotRows(plots: readonly Plot[], columns: number, available: number, room: Room): readonly Item[] {
  const height = Math.min(available, PLOT_HEIGHT.most);
  const width = (room.width - (columns - 1) * GAP) / columns;
  return plots.flatMap((plot, i) =>
    plotItems(plot, {
      x: room.x + (i % columns) * (width + GAP),
      y: room.y + Math.floor(i / columns) * (height + GAP),
      width,
      height,
    }),
  );
}
