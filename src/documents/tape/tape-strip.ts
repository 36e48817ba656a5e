import { numberText } from '../table/number-text.ts';
import { roomFor, sideStyle, strokeAt } from './strip-style.ts';
import type { Branch, TapeContent, TapeMark, TapeTick } from './tape-content.ts';
import { type PlacedLabel, placeLabels, type Rank, rankOf } from './tape-labels.ts';

const HEAD_ROOM = 7.6;
const FOOT_ROOM = 2.5;

interface StripTick {
  readonly label: number;
  readonly rank: Rank;
  readonly branch: Branch;
  readonly y: number;
  readonly stroke: number;
}

export interface StripLabel extends PlacedLabel {
  readonly branch: Branch;
  readonly text: string;
}

/** One strip, measured but not drawn: mm from its own top; every y of a tick is the mark itself, never rounded. */
export interface Strip {
  readonly name: string;
  readonly lettering: number;
  readonly height: number;
  readonly ticks: readonly StripTick[];
  readonly labels: readonly StripLabel[];
  readonly shot: readonly { readonly y: number; readonly branch: Branch }[];
  readonly zero: { readonly y: number; readonly branch: Branch; readonly shot: boolean };
}

export interface StripSource {
  readonly name: string;
  readonly lettering: number;
  readonly ticks: readonly TapeTick[];
  readonly calibration: readonly TapeMark[];
}

/** A mark shot this close to the zero, m, shares its sign: nearer than any printer can show. */
const SAME_PLACE = 2e-5;

export const isAtZero = (mark: TapeMark, zero: TapeContent['zero']): boolean =>
  Math.abs(mark.along) < SAME_PLACE && mark.branch === zero.branch;

/** Measure one strip: the head first, then the longest reach of ticks and labels, whichever way ranges run. */
export function layOutStrip(source: StripSource, content: Pick<TapeContent, 'increases' | 'zero'>): Strip {
  const down = content.increases === 'down' ? 1000 : -1000;
  const wishes = source.ticks.map((tick) => ({
    label: tick.label,
    branch: tick.branch,
    at: down * tick.along,
  }));
  const columns = {
    far: wishes.filter(({ branch }) => branch === 'far'),
    near: wishes.filter(({ branch }) => branch === 'near'),
  };
  const labels = (['far', 'near'] as const).flatMap((branch) => {
    return placeLabels(columns[branch], roomFor(sideStyle(branch, source.lettering).size)).map(
      (label): StripLabel => ({ ...label, branch, text: numberText(label.label) }),
    );
  });
  const shot = source.calibration
    .filter((mark) => !isAtZero(mark, content.zero))
    .map(({ along, branch }) => ({ at: down * along, branch }));
  const reach = [
    0,
    ...wishes.map(({ at }) => at),
    ...shot.map(({ at }) => at),
    ...labels.flatMap(({ middle, rank, branch }) => {
      const half = roomFor(sideStyle(branch, source.lettering).size)[rank] / 2;
      return [middle - half, middle + half];
    }),
  ];
  const top = HEAD_ROOM - reach.reduce((a, b) => Math.min(a, b));
  return {
    name: source.name,
    lettering: source.lettering,
    height: top + reach.reduce((a, b) => Math.max(a, b)) + FOOT_ROOM,
    ticks: wishes.map(({ label, branch, at }) => ({
      label,
      branch,
      rank: rankOf(label),
      y: top + at,
      stroke: strokeAt(at, rankOf(label), columns[branch]),
    })),
    labels: labels.map((label) => ({ ...label, at: top + label.at, middle: top + label.middle })),
    shot: shot.map(({ at, branch }) => ({ y: top + at, branch })),
    zero: {
      y: top,
      branch: content.zero.branch,
      shot: source.calibration.some((mark) => isAtZero(mark, content.zero)),
    },
  };
}
