import { numberText } from '../table/number-text.ts';
import type { SheetRule } from './sheet-rule.ts';
import type { Branch, StripForm, TapeContent, TapeSource } from './tape-content.ts';
import { type PlacedLabel, placeLabels, type Rank, rankOf } from './tape-labels.ts';
import { hollowHeight, strokeAt } from './tick-stroke.ts';

export interface StripTick {
  readonly label: number;
  readonly rank: Rank;
  readonly branch: Branch;
  readonly y: number;
  readonly stroke: number;
  /** Of a tick that nothing shot has proven; null for a solid one. */
  readonly hollow: number | null;
}

export interface StripLabel extends PlacedLabel {
  readonly branch: Branch;
  readonly text: string;
  /** The em, mm. */
  readonly size: number;
}

/** A hairline right across, to lay the strip by. */
export interface Hairline {
  readonly kind: 'shot' | 'zero' | 'zero-shot' | 'join';
  readonly y: number;
  readonly branch: Branch;
}

/** One strip, measured but not drawn: mm from its own top; every y of a tick is the mark itself, never rounded. */
export interface Strip {
  readonly name: string;
  readonly caption: string;
  readonly along: readonly string[];
  readonly unit: string;
  /** Without the tab. */
  readonly height: number;
  readonly ticks: readonly StripTick[];
  readonly labels: readonly StripLabel[];
  readonly lines: readonly Hairline[];
  /** Where the zero range is; null on the later strips of a tape that runs on. */
  readonly zero: number | null;
  /** Grey paper under the near branch. */
  readonly band: { readonly top: number; readonly bottom: number; readonly width: number } | null;
  /** What the tab is for. */
  readonly tab: string;
}

/** A mark shot this close to the zero, m, shares its line: nearer than any printer can show. */
const SAME_PLACE = 2e-5;
/** Paper beyond the outermost ticks, mm: room for half of a number. */
const BEYOND = { upright: 1.8, sideways: 3.4 } as const;
const BAND_MARGIN = 0.5;
const GLUE = 'glue';

/** How much longer a strip is than the way between its outermost marks, mm. */
export const endsOf = ({ numbers }: Pick<StripForm, 'numbers'>): number => 2 * BEYOND[numbers];

/** Measure one strip by the rule of its sheet. */
export function layOutStrip(
  tape: TapeSource,
  rule: SheetRule,
  { zero, unit }: Pick<TapeContent, 'zero' | 'unit'>,
): Strip {
  const { form } = rule;
  const down = form.farAt === 'bottom' ? 1000 : -1000;
  const ticks = rule.drawn(tape).map((tick) => ({ ...tick, at: down * tick.along }));
  const on = (branch: Branch) => ticks.filter((tick) => tick.branch === branch);
  const columns = { far: on('far'), near: on('near') };
  const labels = (['far', 'near'] as const).flatMap((branch) =>
    placeLabels(columns[branch], rule.numbered[branch], rule.room(branch)).map(
      ({ label, at, middle, rank }): StripLabel => ({
        label,
        at,
        middle,
        rank,
        branch,
        text: numberText(label),
        size: rule.size(label, branch),
      }),
    ),
  );
  const shot = tape.shot
    .filter((mark) => !(Math.abs(mark.along - tape.zeroAt) < SAME_PLACE && mark.branch === zero.branch))
    .map(({ along, branch }) => ({ kind: 'shot' as const, y: down * along, branch }));
  const lines: readonly Hairline[] = [
    { kind: zero.shot ? 'zero-shot' : 'zero', y: down * tape.zeroAt, branch: zero.branch },
    ...shot,
  ];
  const outermost = [...ticks.map(({ at }) => at), ...lines.map(({ y }) => y)].flatMap((y) => [
    y - BEYOND[form.numbers],
    y + BEYOND[form.numbers],
  ]);
  const reach = [
    ...outermost,
    ...labels.flatMap(({ middle, label, branch }) => {
      const half = rule.room(branch)(label) / 2;
      return [middle - half, middle + half];
    }),
  ];
  const least = reach.reduce((a, b) => Math.min(a, b));
  const needed = reach.reduce((a, b) => Math.max(a, b)) - least;
  const height = form.length === null ? needed : Math.max(needed, form.length);
  const top = -least + (form.farAt === 'top' ? height - needed : 0);
  return {
    name: tape.name,
    caption: tape.caption,
    along: tape.along,
    unit,
    height,
    ticks: ticks.map(({ label, branch, at, range }) => ({
      label,
      branch,
      rank: rankOf(label),
      y: top + at,
      stroke: strokeAt(at, rankOf(label), columns[branch]),
      hollow: tape.provenTo !== null && range > tape.provenTo ? hollowHeight(at, columns[branch]) : null,
    })),
    labels: labels.map((label) => ({ ...label, at: top + label.at, middle: top + label.middle })),
    lines: lines.map((line) => ({ ...line, y: top + line.y })),
    zero: top + down * tape.zeroAt,
    band: bandOf(rule, top, [
      ...columns.near.flatMap(({ at }) => [at - BAND_MARGIN, at + BAND_MARGIN]),
      ...labels
        .filter(({ branch }) => branch === 'near')
        .flatMap(({ middle, label }) => {
          const half = rule.room('near')(label) / 2;
          return [middle - half, middle + half];
        }),
    ]),
    tab: GLUE,
  };
}

const bandOf = ({ band }: SheetRule, top: number, reach: readonly number[]): Strip['band'] =>
  band === null || reach.length === 0
    ? null
    : {
        top: top + reach.reduce((a, b) => Math.min(a, b)),
        bottom: top + reach.reduce((a, b) => Math.max(a, b)),
        width: band,
      };
