import { type Drawing, type Item, type PaperName, paperSizes } from '../../documents/page/drawing.ts';
import { cautionBlock, textBlock, titleBlock } from '../../documents/page/text-block.ts';
import { checkBars } from '../../documents/tape/check-bars.ts';
import { leastShift } from '../../documents/tape/tape-labels.ts';
import { at } from '../../numerics/at.ts';
import { formatQuantity, fromSi } from '../../quantities/format.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine } from '../head.ts';
import type { Session } from '../session.ts';
import { warnings } from '../warnings.ts';
import type { PinsFindings } from './findings.ts';
import { pinName } from './words.ts';

const MARGIN = 10;
const SIDE_COLUMN = 38;
/** The card with the pins, mm: cut at its left edge, it stands beside them. */
const CARD = { width: 95, above: 14, below: 14, line: 16, dot: 0.75 };
const LABEL = { size: 3, apart: 4.2, from: 22 };
/** Corners of a dot: a circle to a hundredth of a millimetre. */
const CORNERS = 24;

/** The pins at true size, as the archer sees them, on a card to hold against the sight. */
export function pinsSheet(
  session: Session,
  { pins }: PinsFindings,
  { paper, day }: { readonly paper: PaperName; readonly day: string },
): Drawing {
  const size = paperSizes[paper];
  const sideLeft = size.width - MARGIN - SIDE_COLUMN;
  const width = sideLeft - 2 * MARGIN;
  const title = titleBlock(
    session.title,
    [
      arrowLine(session),
      airLine(session),
      `${day}. Cut along the left edge and hold the card beside the pins.`,
    ],
    { left: MARGIN, top: MARGIN - 1, width },
  );
  const heading = textBlock(
    ['Print at 100 %'],
    { left: sideLeft, top: MARGIN, width: SIDE_COLUMN },
    { role: 'print-note', size: 3.6, weight: 'bold' },
  );
  const bars = checkBars(sideLeft, heading.bottom + 8);
  const top = title.bottom + 10;
  const first = top + CARD.above;
  const ys = pins.map(({ below }) => first + fromSi(below, 'mm'));
  const labels = leastShift(
    ys,
    ys.slice(1).map(() => LABEL.apart),
  );
  const bottom = Math.max(at(ys, ys.length - 1), at(labels, labels.length - 1)) + CARD.below;
  const cautions = [...warnings(session), ...shotCautions(session).map(cautionOnPaper)];
  const place = { left: MARGIN, width: size.width - 2 * MARGIN };
  const cautionHeight = cautionBlock(cautions, { ...place, top: 0 }).bottom;
  return {
    pages: [
      {
        ...size,
        items: [
          ...title.items,
          ...heading.items,
          ...bars.items,
          ...edges({ left: MARGIN, right: MARGIN + CARD.width, top, bottom }),
          ...pins.flatMap((pin, i): readonly Item[] => {
            const [y, label] = [at(ys, i), at(labels, i)];
            const words = [
              pinName(pin, session.units),
              `${formatQuantity(pin.below, 'mm', 2)}`,
              formatQuantity(pin.below, 'thou', 0),
            ].join('   ');
            return [
              {
                kind: 'line',
                role: 'pin-line',
                from: { x: MARGIN, y },
                to: { x: MARGIN + CARD.line, y },
                colour: 'ink',
                stroke: 0.1,
              },
              dot(MARGIN + CARD.line / 2, y),
              {
                kind: 'line',
                role: 'leader',
                from: { x: MARGIN + CARD.line, y },
                to: { x: MARGIN + LABEL.from - 0.6, y: label },
                colour: 'slate',
                stroke: 0.08,
              },
              {
                kind: 'text',
                role: 'pin-label',
                x: MARGIN + LABEL.from,
                y: label + 0.36 * LABEL.size,
                text: words,
                size: LABEL.size,
                colour: 'ink',
              },
            ];
          }),
          ...cautionBlock(cautions, { ...place, top: size.height - MARGIN - cautionHeight }).items,
        ],
      },
    ],
  };
}

function dot(x: number, y: number): Item {
  return {
    kind: 'polyline',
    role: 'pin',
    points: Array.from({ length: CORNERS }, (_, i) => {
      const angle = (2 * Math.PI * i) / CORNERS;
      return { x: x + CARD.dot * Math.cos(angle), y: y + CARD.dot * Math.sin(angle) };
    }),
    closed: true,
    fill: 'ink',
    colour: 'ink',
    stroke: 0.05,
  };
}

function edges({
  left,
  right,
  top,
  bottom,
}: {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}): readonly Item[] {
  const corners = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  return corners.map((from, i) => ({
    kind: 'line',
    role: 'cut',
    from,
    to: at(corners, (i + 1) % corners.length),
    colour: 'slate',
    stroke: 0.1,
    dash: [0.7, 0.9],
  }));
}
