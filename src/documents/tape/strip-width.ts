import type { Weight } from '../page/drawing.ts';
import { textWidth } from '../page/text-measure.ts';
import { roomFor, sideStyle } from './strip-style.ts';
import type { Strip, StripLabel } from './tape-strip.ts';

const NARROWEST = 12;
const BETWEEN_COLUMNS = 0.7;

/** Grey paper under the near ticks and their labels, so that no one reads them as the others; mm from its own edge. */
export interface NearBand {
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
}

const BAND_MARGIN = 0.5;

/** The band of a strip, or nothing when it has no near branch. */
export function nearBand({ ticks, labels, lettering }: Strip): NearBand | undefined {
  const style = sideStyle('near', lettering);
  const near = labels.filter(({ branch }) => branch === 'near');
  const ys = ticks.filter(({ branch }) => branch === 'near').map(({ y }) => y);
  if (ys.length === 0) return undefined;
  const ends = near.flatMap(({ middle, rank }) => {
    const half = roomFor(style.size)[rank] / 2;
    return [middle - half, middle + half];
  });
  const widths = near.map((label) => style.labelFrom + labelWidth(label, lettering));
  return {
    top: [...ys.map((y) => y - BAND_MARGIN), ...ends].reduce((a, b) => Math.min(a, b)),
    bottom: [...ys.map((y) => y + BAND_MARGIN), ...ends].reduce((a, b) => Math.max(a, b)),
    width: [style.tick.ten, ...widths].reduce((a, b) => Math.max(a, b)) + BAND_MARGIN,
  };
}

export const labelWeight = ({ rank, branch }: StripLabel): Weight =>
  rank === 'ten' && branch === 'far' ? 'bold' : 'regular';

const labelWidth = (label: StripLabel, lettering: number): number =>
  textWidth(label.text, sideStyle(label.branch, lettering).size[label.rank], labelWeight(label));

/** The width in which no far label reaches a near band or the other edge, mm: all strips of a sheet are cut alike. */
export function stripWidth(strips: readonly Strip[]): number {
  const needed = strips.flatMap((strip) => {
    const band = nearBand(strip);
    const bandWidth = band === undefined ? 0 : band.width;
    const style = sideStyle('far', strip.lettering);
    const beside = (label: StripLabel) => {
      const half = roomFor(style.size)[label.rank] / 2;
      const meets = band !== undefined && label.middle + half > band.top && label.middle - half < band.bottom;
      return meets ? bandWidth : 0;
    };
    const labels = strip.labels.filter(({ branch }) => branch === 'far');
    return [
      style.tick.ten + BETWEEN_COLUMNS + bandWidth,
      ...labels.map(
        (label) => style.labelFrom + labelWidth(label, strip.lettering) + BETWEEN_COLUMNS + beside(label),
      ),
    ];
  });
  return needed.reduce((a, b) => Math.max(a, b), NARROWEST);
}
