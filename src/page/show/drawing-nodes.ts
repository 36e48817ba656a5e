import {
  type Colour,
  type Item,
  itemsOf,
  type LineItem,
  type Page,
  palette,
  type TextItem,
} from '../../documents/page/drawing.ts';
import { printableText } from '../../documents/page/printable-text.ts';
import { textWidth } from '../../documents/page/text-measure.ts';
import { drawn } from './element.ts';

/** As in the SVG file: a tick is then within 5e-5 mm of its mark. */
const DECIMALS = 4;
const number = (value: number): string => String(Number(value.toFixed(DECIMALS)));

/** How a colour of the drawing is shown: as on paper, or in the colours of the screen (light, dark, red). */
export type Ground = 'paper' | 'screen';

const paint = (name: 'fill' | 'stroke', colour: Colour | undefined, ground: Ground) => {
  if (colour === undefined) return { [name]: 'none' };
  return ground === 'paper' ? { [name]: palette[colour] } : { [`data-${name}`]: colour };
};

const strokeOf = (
  { colour, stroke, dash }: Pick<LineItem, 'colour' | 'stroke' | 'dash'>,
  ground: Ground,
) => ({
  ...paint('stroke', colour, ground),
  'stroke-width': number(stroke),
  'stroke-dasharray': dash?.map(number).join(' '),
});

/** One mark of a drawing as a node; what stands in it is set as text and never read as markup. */
export function itemNode(item: Item, ground: Ground): SVGElement {
  switch (item.kind) {
    case 'line': {
      const { from, to } = item;
      const ends = { x1: number(from.x), y1: number(from.y), x2: number(to.x), y2: number(to.y) };
      return drawn('line', { 'data-role': item.role, ...ends, ...strokeOf(item, ground) });
    }
    case 'polyline': {
      const points = item.points.map(({ x, y }) => `${number(x)},${number(y)}`).join(' ');
      const style = { ...paint('fill', item.fill, ground), ...strokeOf(item, ground) };
      return drawn(item.closed === true ? 'polygon' : 'polyline', {
        'data-role': item.role,
        points,
        ...style,
      });
    }
    case 'rect':
      return drawn('rect', {
        'data-role': item.role,
        x: number(item.x),
        y: number(item.y),
        width: number(item.width),
        height: number(item.height),
        ...paint('fill', item.fill, ground),
        ...(item.outline === undefined ? {} : strokeOf(item.outline, ground)),
      });
    case 'text':
      return textNode(item, ground);
  }
}

function textNode(item: TextItem, ground: Ground): SVGElement {
  const x = number(item.x);
  const y = number(item.y);
  return drawn(
    'text',
    {
      'data-role': item.role,
      x,
      y,
      'font-size': number(item.size),
      'font-weight': item.weight === 'bold' ? 'bold' : undefined,
      'text-anchor': item.anchor,
      // The layout measured our own typeface; another one is set as wide, so that nothing overlaps.
      textLength: number(textWidth(item.text, item.size, item.weight)),
      lengthAdjust: 'spacingAndGlyphs',
      transform: item.rotation === undefined ? undefined : `rotate(${number(item.rotation)} ${x} ${y})`,
      'xml:space': 'preserve',
      ...paint('fill', item.colour, ground),
    },
    printableText(item.text),
  );
}

/** A page of a document, as large as the paper when `scale` is 1 and a millimetre of the screen is one. */
export function pageNode(page: Page, title: string, scale: number): SVGSVGElement {
  const { width, height } = page;
  return drawn(
    'svg',
    {
      class: 'sheet',
      role: 'img',
      width: `${number(width * scale)}mm`,
      height: `${number(height * scale)}mm`,
      viewBox: `0 0 ${number(width)} ${number(height)}`,
    },
    drawn('title', {}, title),
    drawn('rect', { width: number(width), height: number(height), fill: palette.paper }),
    itemsOf(page).map((item) => itemNode(item, 'paper')),
  );
}
