/** What was measured, as a ratio to something measured beside it in the same run: machines and their load cancel. */
export interface Figure {
  /** Of the baseline's list as well. */
  readonly name: string;
  readonly ratio: number;
  /** What it is a multiple of. */
  readonly of: string;
  /** The ratio that was asked for; absent where none was. */
  readonly target?: number;
  /** The same in units of this machine, or what else is worth knowing. */
  readonly more?: string;
}

const digits = (ratio: number): string => ratio.toPrecision(3);

export const figureLine = ({ name, ratio, of, target, more }: Figure): string => {
  const asked = target === undefined ? '' : ` (target ${target})`;
  return `${name}: ${digits(ratio)} times ${of}${asked}${more === undefined ? '' : `; ${more}`}`;
};

/** Name and ratio, in the order of the bench. */
export type Baseline = Readonly<Record<string, number>>;

export const baselineOf = (figures: readonly Figure[]): Baseline =>
  Object.fromEntries(figures.map(({ name, ratio }) => [name, Number(digits(ratio))]));

/**
 * How much larger than the baseline a ratio may be before it counts. Ratios of two runs differ by up to 15 % on a machine with
 * other work, and whole processes by a little more; what is slower by a quarter is slower.
 */
export const MARGIN = 0.25;

/** What got slower or larger than the baseline by more than the margin, and what the two lists do not share, a sentence each. */
export function whatGotSlower(baseline: Baseline, figures: readonly Figure[]): readonly string[] {
  const known = new Map(Object.entries(baseline));
  const names = new Set(figures.map(({ name }) => name));
  const complaints = figures.flatMap(({ name, ratio, of }): readonly string[] => {
    const before = known.get(name);
    if (before === undefined)
      return [`"${name}" is not in the baseline: write it with npm run bench -- --keep.`];
    if (ratio <= before * (1 + MARGIN)) return [];
    if (!Number.isFinite(ratio)) return [`"${name}" could not be measured.`];
    const more = Math.round(100 * (ratio / before - 1));
    return [`"${name}" is ${digits(ratio)} times ${of}; it was ${digits(before)} times, so ${more} % more.`];
  });
  const gone = [...known.keys()].filter((name) => !names.has(name));
  return [...complaints, ...gone.map((name) => `"${name}" is in the baseline, and nothing measured it.`)];
}

/** Of two measurements of the same things the better of each: load can only make one worse. */
export const betterOf = (first: readonly Figure[], second: readonly Figure[]): readonly Figure[] =>
  first.map((figure) => {
    const again = second.find(({ name }) => name === figure.name);
    return again !== undefined && again.ratio < figure.ratio ? again : figure;
  });
