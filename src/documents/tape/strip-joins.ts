import { at } from '../../numerics/at.ts';
import type { SheetRule } from './sheet-rule.ts';
import { labelReach } from './strip-edges.ts';
import type { Strip } from './tape-strip.ts';

const OVERLAP_TAB = 'glue the next strip on here, its edge on the line';
/** Paper between a seam and the nearest number, mm. */
const AROUND_SEAM = 0.3;

/**
 * A strip in pieces no longer than `room` (mm), each to be glued on the tab of the one above it. They meet half-way between
 * two ticks, where no number stands: a line across the one shows where the other, cut there, is laid.
 *
 * @returns null when no such place is found within the room
 */
export function pieces(strip: Strip, room: number, rule: SheetRule): readonly Strip[] | null {
  const seams = [0];
  for (let from = 0; strip.height - from > room; ) {
    const seam = lastSeam(strip, { from, to: from + room }, rule);
    if (seam === null) return null;
    seams.push(seam);
    from = seam;
  }
  return seams.map((from, i) => pieceOf(strip, { from, to: seams[i + 1] ?? null }));
}

interface Span {
  readonly from: number;
  readonly to: number;
}

function lastSeam(strip: Strip, { from, to }: Span, rule: SheetRule): number | null {
  const far = strip.ticks
    .filter(({ branch }) => branch === 'far')
    .map(({ y }) => y)
    .toSorted((a, b) => a - b);
  const free = far
    .slice(1)
    .map((y, i) => (y + at(far, i)) / 2)
    .filter((y) => y > from && y <= to)
    .filter((y) => strip.band === null || y < strip.band.top || y > strip.band.bottom)
    .filter((y) =>
      strip.labels.every((label) => {
        const { top, bottom } = labelReach(label, rule);
        return y < top - AROUND_SEAM || y > bottom + AROUND_SEAM;
      }),
    );
  return free.length === 0 ? null : free.reduce((a, b) => Math.max(a, b));
}

function pieceOf(strip: Strip, { from, to }: { readonly from: number; readonly to: number | null }): Strip {
  const end = to ?? strip.height;
  const holds = (y: number): boolean => y >= from && y <= end;
  const { band, zero } = strip;
  return {
    ...strip,
    height: end - from,
    ticks: strip.ticks.filter(({ y }) => holds(y)).map((tick) => ({ ...tick, y: tick.y - from })),
    labels: strip.labels
      .filter(({ middle }) => holds(middle))
      .map((label) => ({ ...label, at: label.at - from, middle: label.middle - from })),
    lines: [
      ...strip.lines.filter(({ y }) => holds(y)).map((line) => ({ ...line, y: line.y - from })),
      ...(to === null ? [] : [{ kind: 'join' as const, y: end - from, branch: 'far' as const }]),
    ],
    zero: zero !== null && holds(zero) ? zero - from : null,
    band:
      band === null || !holds(band.top)
        ? null
        : { ...band, top: band.top - from, bottom: Math.min(band.bottom, end) - from },
    tab: to === null ? strip.tab : OVERLAP_TAB,
  };
}
