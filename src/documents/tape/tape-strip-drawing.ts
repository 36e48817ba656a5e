import type { Item, PagePoint } from '../page/drawing.ts';
import { capHeight } from '../page/text-measure.ts';
import { shortenedText } from '../page/wrap-text.ts';
import { sideStyle } from './strip-style.ts';
import { labelWeight, type NearBand, nearBand } from './strip-width.ts';
import type { Branch } from './tape-content.ts';
import type { Strip, StripLabel } from './tape-strip.ts';

/** Which edge of the strip the sight's pointer meets; the near branch takes the other one. */
export type PointerSide = 'left' | 'right';

export interface StripPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly unit: string;
  readonly pointer: PointerSide;
}

/** A label moved less than this, mm, still reads as standing at its tick. */
const UNNOTICED_SHIFT = 0.25;
/** Paper between a tick and the sign or leader that follows it. */
const AFTER_TICK = 0.15;
const SIGN = { width: 0.8, height: 0.95 };

/** Draw one measured strip with its cut lines; ticks start on the cut line, so the pointer meets ink at the very edge. */
export function drawStrip(strip: Strip, place: StripPlace): readonly Item[] {
  const band = nearBand(strip);
  return [
    ...(band === undefined ? [] : [bandItem(band, place)]),
    ...cutLines(strip, place),
    ...head(strip, place, band !== undefined),
    ...strip.ticks.map((tick): Item => {
      const reach = sideStyle(tick.branch, strip.lettering).tick[tick.rank];
      const y = place.y + tick.y;
      return {
        kind: 'line',
        role: 'tick',
        from: { x: across(0, tick.branch, place), y },
        to: { x: across(reach, tick.branch, place), y },
        colour: 'ink',
        stroke: tick.stroke,
      };
    }),
    ...strip.labels.flatMap((label) => labelItems(label, strip.lettering, place)),
    ...strip.shot.map(({ y, branch }) => sign('shot', triangle, y, branch, place)),
    sign(strip.zero.shot ? 'zero-shot' : 'zero', diamond, strip.zero.y, strip.zero.branch, place),
  ];
}

/** The x of a point `inward` mm from the edge that a branch's ticks stand on. */
function across(inward: number, branch: Branch, place: StripPlace): number {
  const onLeft = (place.pointer === 'left') === (branch === 'far');
  return place.x + (onLeft ? inward : place.width - inward);
}

const anchorAt = (branch: Branch, place: StripPlace) =>
  (place.pointer === 'left') === (branch === 'far') ? 'start' : 'end';

function labelItems(label: StripLabel, lettering: number, place: StripPlace): readonly Item[] {
  const style = sideStyle(label.branch, lettering);
  const size = style.size[label.rank];
  const middle = place.y + label.middle;
  const text: Item = {
    kind: 'text',
    role: 'label',
    x: across(style.labelFrom, label.branch, place),
    y: middle + (capHeight * size) / 2,
    text: label.text,
    size,
    colour: 'ink',
    anchor: anchorAt(label.branch, place),
    weight: labelWeight(label),
  };
  if (Math.abs(label.middle - label.at) <= UNNOTICED_SHIFT) return [text];
  const leader: Item = {
    kind: 'line',
    role: 'leader',
    from: { x: across(style.tick.ten, label.branch, place), y: place.y + label.at },
    to: { x: across(style.labelFrom - 0.2, label.branch, place), y: middle },
    colour: 'slate',
    stroke: 0.08,
  };
  return [leader, text];
}

/** Shapes in a unit square whose first point touches the tick. */
const triangle: readonly PagePoint[] = [
  { x: 0, y: 0 },
  { x: 1, y: -0.5 },
  { x: 1, y: 0.5 },
];
const diamond: readonly PagePoint[] = [
  { x: 0, y: 0 },
  { x: 0.5, y: -0.5 },
  { x: 1, y: 0 },
  { x: 0.5, y: 0.5 },
];

/** The sign of a mark: filled when it was shot, outlined for the zero alone. */
function sign(role: string, shape: readonly PagePoint[], y: number, branch: Branch, place: StripPlace): Item {
  const from = sideStyle(branch, 1).tick.ten + AFTER_TICK;
  return signItem(
    role,
    shape.map((point) => ({
      x: across(from + point.x * SIGN.width, branch, place),
      y: place.y + y + point.y * SIGN.height,
    })),
  );
}

function signItem(role: string, points: readonly PagePoint[]): Item {
  return {
    kind: 'polyline',
    role,
    points,
    closed: true,
    fill: role === 'zero' ? 'paper' : 'ink',
    colour: 'ink',
    stroke: 0.12,
  };
}

/** The same signs for a legend, larger, their first point at (x, y). */
export function legendSign(sign: 'shot' | 'zero' | 'zero-shot', x: number, y: number): Item {
  const shape = sign === 'shot' ? triangle : diamond;
  const points = shape.map((p) => ({ x: x + 2 * p.x * SIGN.width, y: y + 2 * p.y * SIGN.height }));
  return { ...signItem(sign, points), role: 'legend' };
}

function bandItem({ top, bottom, width }: NearBand, place: StripPlace): Item {
  const x = Math.min(across(0, 'near', place), across(width, 'near', place));
  return { kind: 'rect', role: 'near-band', x, y: place.y + top, width, height: bottom - top, fill: 'fog' };
}

function cutLines(strip: Strip, place: StripPlace): readonly Item[] {
  const right = place.x + place.width;
  const bottom = place.y + strip.height;
  const cut = (x1: number, y1: number, x2: number, y2: number): Item => ({
    kind: 'line',
    role: 'cut',
    from: { x: x1, y: y1 },
    to: { x: x2, y: y2 },
    colour: 'slate',
    stroke: 0.1,
    dash: [0.7, 0.9],
  });
  return [
    cut(place.x, place.y, place.x, bottom),
    cut(right, place.y, right, bottom),
    cut(place.x, place.y, right, place.y),
    cut(place.x, bottom, right, bottom),
  ];
}

/** The strip's name, then what each column of numbers is: a cut-out strip has lost the page around it. */
function head(strip: Strip, place: StripPlace, hasNear: boolean): readonly Item[] {
  const name = { size: 2, weight: 'bold', width: place.width - 1.6 } as const;
  const heading = (text: string, branch: Branch): Item => ({
    kind: 'text',
    role: 'heading',
    x: across(0.8, branch, place),
    y: place.y + 5.7,
    text,
    size: 1.6,
    colour: 'slate',
    anchor: anchorAt(branch, place),
  });
  return [
    {
      kind: 'text',
      role: 'name',
      x: place.x + place.width / 2,
      y: place.y + 3.1,
      text: shortenedText(strip.name, name),
      size: name.size,
      colour: 'ink',
      anchor: 'middle',
      weight: name.weight,
    },
    heading(place.unit, 'far'),
    ...(hasNear ? [heading('near', 'near')] : []),
  ];
}
