import { DomainError } from '../../quantities/domain-error.ts';
import type { Item } from '../page/drawing.ts';
import { type Block, cautionBlock, textBlock, titleBlock } from '../page/text-block.ts';
import { checkBars } from './check-bars.ts';
import { hasRoomForNear } from './sheet-rule.ts';
import { legendSign } from './strip-lines.ts';
import { type TapeContent, tapesOf } from './tape-content.ts';

/** Where things stand on a sheet, mm. The side column holds what to set in the printer, and what to check. */
const MARGIN = 10;
const SIDE_COLUMN = 38;
const COLUMN_GAP = 7;
const BODY_GAP = 5;
const NOTE = { role: 'note', size: 2.4 } as const;

interface SheetSize {
  readonly width: number;
  readonly height: number;
}

export interface SheetFrame {
  /** The room left for the strips, mm. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly bottom: number;
  readonly items: readonly Item[];
}

/**
 * The parts of a sheet that every page of a tape repeats: title, checks of scale, legend, cautions.
 * @throws DomainError when the cautions need more room than the sheet has
 */
export function layOutSheet(content: TapeContent, size: SheetSize): SheetFrame {
  const sideLeft = size.width - MARGIN - SIDE_COLUMN;
  const width = sideLeft - COLUMN_GAP - MARGIN;
  const title = titleBlock(content.title, content.subtitle, { left: MARGIN, top: MARGIN - 1, width });
  const side = sideBlock(content, sideLeft);
  const cautionsAt = (top: number) =>
    cautionBlock(content.warnings, { left: MARGIN, top, width: size.width - 2 * MARGIN });
  const cautionsTop = size.height - MARGIN - cautionsAt(0).bottom;
  if (cautionsTop < side.bottom + BODY_GAP)
    throw new DomainError(
      'the height of the cautions (mm)',
      Math.ceil(cautionsAt(0).bottom),
      `at most ${Math.floor(size.height - MARGIN - BODY_GAP - side.bottom)}; give fewer or shorter ones`,
    );
  return {
    left: MARGIN,
    top: title.bottom + BODY_GAP,
    width,
    bottom: cautionsTop - BODY_GAP,
    items: [...title.items, ...side.items, ...cautionsAt(cautionsTop).items],
  };
}

function sideBlock(content: TapeContent, left: number): Block {
  const place = { left, width: SIDE_COLUMN };
  const heading = textBlock(
    ['Print at 100 %'],
    { ...place, top: MARGIN },
    { role: 'print-note', size: 3.6, weight: 'bold' },
  );
  const advice = textBlock(
    [
      'Actual size, never "fit to page". Then check both bars with a ruler: if either is off, so is the tape.',
    ],
    { ...place, top: heading.bottom + 0.5 },
    NOTE,
  );
  const bars = checkBars(left, advice.bottom + 5);
  const legend = legendBlock(content, left, bars.bottom + 7);
  const separator: Item = {
    kind: 'line',
    from: { x: left - COLUMN_GAP / 2, y: MARGIN },
    to: { x: left - COLUMN_GAP / 2, y: legend.bottom },
    colour: 'mist',
    stroke: 0.15,
  };
  return {
    items: [separator, ...heading.items, ...advice.items, ...bars.items, ...legend.items],
    bottom: legend.bottom,
  };
}

interface LegendRow {
  readonly sign: (y: number) => Item;
  readonly words: string;
}

function legendBlock(content: TapeContent, left: number, top: number): Block {
  const items: Item[] = [];
  let y = top;
  for (const { sign, words } of legendRows(content, left)) {
    const text = textBlock([words], { left: left + 3.4, top: y, width: SIDE_COLUMN - 3.4 }, NOTE);
    items.push(sign(y + 1.65), ...text.items);
    y = text.bottom + 1.2;
  }
  if (content.nearby === null) return { items, bottom: y };
  const nearby = textBlock(
    [content.nearby],
    { left, top: y + 1.5, width: SIDE_COLUMN },
    { ...NOTE, colour: 'slate' },
  );
  return { items: [...items, ...nearby.items], bottom: nearby.bottom };
}

function legendRows(content: TapeContent, left: number): readonly LegendRow[] {
  const tapes = tapesOf(content);
  const kind = content.zero.shot ? 'zero-shot' : 'zero';
  const zero: LegendRow = {
    sign: (y) => legendSign(kind, left, y),
    words: `line across: the zero range${content.zero.shot ? ', shot' : ', not shot yet'}`,
  };
  const shot: LegendRow = {
    sign: (y) => legendSign('shot', left, y),
    words: 'line across: a range that was shot; lay the strip by these lines',
  };
  const hollow: LegendRow = {
    sign: (y) => ({
      kind: 'rect',
      x: left,
      y: y - 0.25,
      width: 1.8,
      height: 0.5,
      outline: { colour: 'ink', stroke: 0.08 },
    }),
    words: content.unproven,
  };
  const near: LegendRow = {
    sign: (y) => ({ kind: 'rect', x: left, y: y - 1, width: 1.6, height: 2, fill: 'fog' }),
    words: 'near: marks turn back this close; for these ranges only',
  };
  const unproven = tapes.some(
    ({ ticks, provenTo }) => provenTo !== null && ticks.some(({ range }) => range > provenTo),
  );
  const isNear = tapes.some(({ ticks }) => ticks.some(({ branch }) => branch === 'near'));
  return [
    zero,
    ...(tapes.some((tape) => tape.shot.some(({ along }) => along !== tape.zeroAt)) ? [shot] : []),
    ...(unproven ? [hollow] : []),
    ...(isNear && hasRoomForNear(content.form.width) ? [near] : []),
  ];
}
