import {
  type Item,
  itemsOf,
  type LineItem,
  type Page,
  palette,
  type RectItem,
  type TextItem,
} from '../page/drawing.ts';
import { printableText } from '../page/printable-text.ts';

/** Decimals of a coordinate in mm: a tick is then within 5e-5 mm of its mark. */
const DECIMALS = 4;

export interface SvgOptions {
  readonly title: string;
}

/** One page of a drawing as an SVG document, as large as the paper; a coordinate in it is a millimetre. */
export function renderSvg(page: Page, options: SvgOptions): string {
  const width = number(page.width);
  const height = number(page.height);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`,
    '  font-family="DejaVu Sans Condensed, DejaVu Sans, sans-serif" font-stretch="condensed" font-kerning="none">',
    `<title>${escaped(options.title)}</title>`,
    `<rect width="${width}" height="${height}" fill="${palette.paper}"/>`,
    ...itemsOf(page).map(element),
    '</svg>',
    '',
  ].join('\n');
}

/** Shortest decimal text of a length: no exponent, no trailing zeros, no minus before nothing. */
function number(value: number): string {
  const text = value.toFixed(DECIMALS).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escaped = (text: string) =>
  printableText(text).replace(/[&<>"']/g, (character) => escapes[character] ?? '');

const attributes = (pairs: Readonly<Record<string, string | undefined>>) =>
  Object.entries(pairs)
    .flatMap(([name, value]) => (value === undefined ? [] : [` ${name}="${escaped(value)}"`]))
    .join('');

function element(item: Item): string {
  switch (item.kind) {
    case 'line': {
      const ends = {
        x1: number(item.from.x),
        y1: number(item.from.y),
        x2: number(item.to.x),
        y2: number(item.to.y),
      };
      return `<line${attributes({ class: item.role, ...ends, ...stroke(item) })}/>`;
    }
    case 'polyline': {
      const points = item.points.map(({ x, y }) => `${number(x)},${number(y)}`).join(' ');
      const fill = item.fill === undefined ? 'none' : palette[item.fill];
      const name = item.closed === true ? 'polygon' : 'polyline';
      return `<${name}${attributes({ class: item.role, points, fill, ...stroke(item) })}/>`;
    }
    case 'rect':
      return rect(item);
    case 'text':
      return text(item);
  }
}

const stroke = (item: Pick<LineItem, 'colour' | 'stroke' | 'dash'>) => ({
  stroke: palette[item.colour],
  'stroke-width': number(item.stroke),
  'stroke-dasharray': item.dash?.map(number).join(' '),
});

function rect(item: RectItem): string {
  const box = {
    x: number(item.x),
    y: number(item.y),
    width: number(item.width),
    height: number(item.height),
  };
  const fill = item.fill === undefined ? 'none' : palette[item.fill];
  const outline = item.outline === undefined ? {} : stroke(item.outline);
  return `<rect${attributes({ class: item.role, ...box, fill, ...outline })}/>`;
}

function text(item: TextItem): string {
  const x = number(item.x);
  const y = number(item.y);
  const turn = item.rotation === undefined ? undefined : `rotate(${number(item.rotation)} ${x} ${y})`;
  const start = attributes({
    class: item.role,
    x,
    y,
    'font-size': number(item.size),
    'font-weight': item.weight === 'bold' ? 'bold' : undefined,
    'text-anchor': item.anchor === undefined || item.anchor === 'start' ? undefined : item.anchor,
    fill: palette[item.colour],
    transform: turn,
    'xml:space': 'preserve',
  });
  return `<text${start}>${escaped(item.text)}</text>`;
}
