import { at } from '../../numerics/at.ts';
import { oncePer, oncePerNumber } from '../../numerics/once.ts';
import { capHeight, textWidth } from '../page/text-measure.ts';
import { NARROWEST_WITH_NEAR, type StripGrid, stripGrid } from './strip-grid.ts';
import type { Branch, StripForm, TapeSource, TapeTick } from './tape-content.ts';
import { type LabelRoom, type LabelWish, numberedRanges, type Rank, rankOf } from './tape-labels.ts';
import { thinnedTicks } from './thin-ticks.ts';

/** What all strips of a sheet have in common, so that they look alike and cut alike. */
export interface SheetRule {
  readonly form: StripForm;
  readonly grid: StripGrid;
  /** The ticks of a tape that are drawn. */
  readonly drawn: (tape: TapeSource) => readonly TapeTick[];
  /** The em of a range's number, mm. */
  readonly size: (label: number, branch: Branch) => number;
  readonly room: (branch: Branch) => LabelRoom;
  readonly numbered: Readonly<Record<Branch, ReadonlySet<number>>>;
  /** Grey paper under the near ticks and numbers, mm from its own edge; null without near ranges. */
  readonly band: number | null;
}

/** Digits this high, mm, are read at arm's length in dusk (common practice, no source); larger ones only if fives keep theirs. */
const WANTED_DIGITS = 2.5;
const LARGEST_DIGITS = 3.4;
const SMALLEST_EM = 1.4;
/** No number is smaller, even beside a near branch on the narrowest strip. */
const LEAST_EM = 0.6;
/** Fives and ones beside the tens. */
const SHARE: Readonly<Record<Rank, number>> = { ten: 1, five: 0.68, one: 0.58 };
const NEAR_EM: Readonly<Record<Rank, number>> = { ten: 1.7, five: 1.6, one: 1.5 };
/** The tallest digits reach 0.76 em with their feet; a hair keeps neighbours apart, more so ones. */
const DIGIT_EMS = 0.76;
const CLEAR: Readonly<Record<Rank, number>> = { ten: 0.35, five: 0.35, one: 0.7 };
const CLEAR_SIDEWAYS = 0.5;
const EDGE = 0.35;
const BAND_MARGIN = 0.5;
/** A pair of tens closer than this share of the middle one of all their distances is spread with leaders instead. */
const CROWDED_PAIR = 0.5;

export const weightOf = (rank: Rank, branch: Branch) =>
  rank === 'ten' && branch === 'far' ? 'bold' : 'regular';

/** Width of a number with an em of 1. */
const emsWide = (label: number, branch: Branch): number =>
  textWidth(String(label), 1, weightOf(rankOf(label), branch));

/** Whether a strip is wide enough for a second column on its other edge. */
export const hasRoomForNear = (width: number): boolean => width >= NARROWEST_WITH_NEAR;

export function sheetRule(tapes: readonly TapeSource[], form: StripForm): SheetRule {
  const grid = stripGrid(form.width);
  const drawn = oncePer(thinnedTicks(tapes, hasRoomForNear(form.width)));
  const all = tapes.flatMap(drawn);
  const band = bandWidth(all, grid);
  const size = sizes(tapes.map(drawn), { form, grid, band });
  const roomOf = (label: number, branch: Branch): number =>
    form.numbers === 'sideways' && branch === 'far'
      ? emsWide(label, branch) * size(label, branch) + CLEAR_SIDEWAYS
      : DIGIT_EMS * size(label, branch) + CLEAR[rankOf(label)];
  // Every number is held against every other.
  const room = (branch: Branch): LabelRoom => oncePerNumber((label) => roomOf(label, branch));
  const columns = (branch: Branch): readonly (readonly LabelWish[])[] =>
    tapes.map((tape) =>
      drawn(tape).flatMap(({ label, along, branch: own }) =>
        own === branch ? [{ label, at: 1000 * along }] : [],
      ),
    );
  return {
    form,
    grid,
    drawn,
    size,
    room,
    numbered: {
      far: numberedRanges(columns('far'), room('far'), 'roomy'),
      near: numberedRanges(columns('near'), room('near'), 'crowded'),
    },
    band,
  };
}

function bandWidth(ticks: readonly TapeTick[], { nearTick, nearLabelFrom }: StripGrid): number | null {
  const near = ticks.filter(({ branch }) => branch === 'near');
  if (near.length === 0) return null;
  const widths = near.map(({ label }) => nearLabelFrom + emsWide(label, 'near') * NEAR_EM[rankOf(label)]);
  return BAND_MARGIN + widths.reduce((a, b) => Math.max(a, b), nearTick.ten);
}

interface Lettered {
  readonly form: StripForm;
  readonly grid: StripGrid;
  readonly band: number | null;
}

/** The em of each number: of tens by the room across and along the strips, of the others by their share of it. */
function sizes(
  strips: readonly (readonly TapeTick[])[],
  { form, grid, band }: Lettered,
): (label: number, branch: Branch) => number {
  const sideways = form.numbers === 'sideways';
  const inner = form.width - grid.labelFrom;
  const across = (label: number, other: number): number => {
    if (sideways) return (inner - Math.max(other, grid.lane + EDGE)) / DIGIT_EMS;
    const lane = label < 100 ? grid.lane + BESIDE_LANE : 0;
    return (inner - Math.max(other, lane)) / emsWide(label, 'far');
  };
  const labels = strips.flat().flatMap(({ label, branch }) => (branch === 'far' ? [label] : []));
  const emsLong = (label: number): number => (sideways ? emsWide(label, 'far') : DIGIT_EMS);
  const ten = Math.min(
    across(labels.some((label) => label < 100) ? WIDE_TEN : WIDE_HUNDRED, EDGE),
    emAlong(strips, emsLong, sideways),
  );
  const clear = sideways ? CLEAR_SIDEWAYS : CLEAR.ten;
  const isCrowded = tenPairs(strips, emsLong).some(({ gap, ems }) => gap < ems * ten + clear);
  const beside = band === null ? new Set<number>() : besideNear(strips, isCrowded);
  return (label, branch) => {
    const rank = rankOf(label);
    if (branch === 'near') return NEAR_EM[rank];
    const other = band !== null && beside.has(label) ? band + EDGE : EDGE;
    return Math.min(
      Math.max(SHARE[rank] * ten, Math.min(SMALLEST_EM, ten)),
      Math.max(LEAST_EM, across(label, other)),
    );
  };
}

/** Numbers as wide as any of two digits, and of three: all digits are alike. */
const WIDE_TEN = 20;
const WIDE_HUNDRED = 100;
const BESIDE_LANE = 0.2;
/** Farther than this from every near tick, mm, no number of the far branch can meet one of the near branch. */
const OUT_OF_REACH = 4.5;

/** The far ranges whose numbers could meet those of the near branch on any strip; all of them where numbers are moved. */
function besideNear(strips: readonly (readonly TapeTick[])[], isCrowded: boolean): ReadonlySet<number> {
  return new Set(
    strips.flatMap((ticks) => {
      const near = ticks.filter(({ branch }) => branch === 'near').map(({ along }) => 1000 * along);
      const from = near.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY) - OUT_OF_REACH;
      const to = near.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY) + OUT_OF_REACH;
      return ticks
        .filter(({ along }) => isCrowded || (1000 * along >= from && 1000 * along <= to))
        .map(({ label }) => label);
    }),
  );
}

interface TenPair {
  readonly gap: number;
  /** The length of strip they take, with an em of 1. */
  readonly ems: number;
}

/** Neighbouring tens of every strip. */
const tenPairs = (
  strips: readonly (readonly TapeTick[])[],
  emsLong: (label: number) => number,
): readonly TenPair[] =>
  strips.flatMap((ticks) => {
    const tens = ticks
      .filter(({ branch, label }) => branch === 'far' && rankOf(label) === 'ten')
      .toSorted((a, b) => a.along - b.along);
    return tens.slice(1).map((tick, i): TenPair => {
      const before = at(tens, i);
      return {
        gap: 1000 * (tick.along - before.along),
        ems: (emsLong(tick.label) + emsLong(before.label)) / 2,
      };
    });
  });

/** The largest em of tens that the distances between them leave room for. */
function emAlong(
  strips: readonly (readonly TapeTick[])[],
  emsLong: (label: number) => number,
  sideways: boolean,
): number {
  const clear = sideways ? CLEAR_SIDEWAYS : CLEAR.ten;
  const pairs = tenPairs(strips, emsLong);
  const gaps = pairs.map(({ gap }) => gap).toSorted((a, b) => a - b);
  const middle = gaps[gaps.length >> 1];
  const uncrowded = pairs.filter(({ gap }) => middle === undefined || gap >= CROWDED_PAIR * middle);
  const smallest = (em: (pair: TenPair) => number): number =>
    uncrowded.map(em).reduce((a, b) => Math.min(a, b), LARGEST_DIGITS / capHeight);
  const alone = smallest(({ gap, ems }) => (gap - clear) / ems);
  const withFives = smallest(({ gap, ems }) => (gap - 2 * clear) / (ems * (1 + SHARE.five)));
  return Math.max(SMALLEST_EM, Math.min(alone, WANTED_DIGITS / capHeight), withFives);
}
