import type { Item } from '../page/drawing.ts';
import { type Block, LEADING, type TextPlace } from '../page/text-block.ts';
import { capHeight, textWidth } from '../page/text-measure.ts';
import { shortenedText } from '../page/wrap-text.ts';
import { numberText, typeset } from '../table/number-text.ts';
import type { Plot, PlotMarker } from './plot-data.ts';
import { lineStyle, pointSign } from './series-style.ts';

const TEXT_SIZE = 2.3;
const LINE_SAMPLE = 7;
const POINT_SAMPLE = 2.4;
const AFTER_SAMPLE = 1.2;
const BETWEEN_ENTRIES = 4;

export const markerStyle = { colour: 'slate', stroke: 0.18, dash: [0.9, 0.7] } as const;

interface Entry {
  readonly text: string;
  readonly sampleWidth: number;
  readonly sample: (x: number, y: number) => Item;
}

/** What each curve, sign and marker stands for, left to right, in as many lines as it takes. */
export function plotLegend(plot: Plot, place: TextPlace): Block {
  const items: Item[] = [];
  let x = place.left;
  let y = place.top;
  for (const { text: whole, sample, sampleWidth } of legendEntries(plot)) {
    const text = shortenedText(whole, { size: TEXT_SIZE, width: place.width - sampleWidth - AFTER_SAMPLE });
    const width = sampleWidth + AFTER_SAMPLE + textWidth(text, TEXT_SIZE);
    if (x > place.left && x + width > place.left + place.width) {
      x = place.left;
      y += LEADING * TEXT_SIZE;
    }
    const baseline = y + TEXT_SIZE;
    items.push(sample(x, baseline - (capHeight * TEXT_SIZE) / 2), {
      kind: 'text',
      role: 'legend',
      x: x + sampleWidth + AFTER_SAMPLE,
      y: baseline,
      text,
      size: TEXT_SIZE,
      colour: 'ink',
    });
    x += width + BETWEEN_ENTRIES;
  }
  return { items, bottom: items.length === 0 ? place.top : y + LEADING * TEXT_SIZE };
}

function legendEntries(plot: Plot): readonly Entry[] {
  const level = (x: number, y: number) => ({ from: { x, y }, to: { x: x + LINE_SAMPLE, y } });
  const curves = plot.series
    .filter(({ kind }) => kind !== 'points')
    .map(
      ({ name }, i): Entry => ({
        text: name,
        sampleWidth: LINE_SAMPLE,
        sample: (x, y) => ({ kind: 'line', role: 'sample', ...level(x, y), ...lineStyle(i) }),
      }),
    );
  const points = plot.series
    .filter(({ kind }) => kind === 'points')
    .map(
      ({ name }, i): Entry => ({
        text: name,
        sampleWidth: POINT_SAMPLE,
        sample: (x, y) => pointSign(i, { x: x + POINT_SAMPLE / 2, y }),
      }),
    );
  const markers = (plot.markers ?? []).map(
    (marker): Entry => ({
      text: markerText(marker, plot),
      sampleWidth: LINE_SAMPLE,
      sample: (x, y) => ({ kind: 'line', role: 'sample', ...level(x, y), ...markerStyle }),
    }),
  );
  return [...curves, ...points, ...markers];
}

function markerText({ axis, at, label }: PlotMarker, plot: Plot): string {
  const { unit } = plot[axis];
  return `${label}: ${typeset(numberText(at))}${unit === '' ? '' : ` ${unit}`}`;
}
