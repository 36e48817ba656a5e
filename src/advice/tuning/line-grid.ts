import { at } from '../../numerics/at.ts';

/** How the arrows at one place of the rest scattered square to the line. */
export interface PlaceSpread {
  readonly position: number;
  /** Variance of the deviations, m². */
  readonly variance: number;
  readonly freedom: number;
}

/** One pair of best place and curvature, and what it says of the spreads. */
export interface GridPoint {
  readonly place: number;
  /** r of variance = a (1 + r (p − p0)²), 1/m². */
  readonly curvature: number;
  /** Relative variance at each place: 1 at the best. */
  readonly relative: readonly number[];
  /** Σ df ln relative, which the deviance needs whatever was shot. */
  readonly logSum: number;
}

const PLACES = 61;
/** The best place is looked for so far beyond either end, as a share of the span. */
const BEYOND = 0.25;
/** Curvatures times the square of half the span: none, then so many even in the logarithm. */
const CURVATURES = { count: 40, least: 0.02, most: 15 } as const;

/**
 * The pairs of best place and curvature that are compared: a fixed grid, so that the same shots always have the same answer.
 *
 * @param places of two or more different positions
 */
export function spreadGrid(places: readonly PlaceSpread[]): readonly GridPoint[] {
  const positions = places.map(({ position }) => position);
  const [low, high] = [Math.min(...positions), Math.max(...positions)];
  const span = high - low;
  const from = low - BEYOND * span;
  const step = (span * (1 + 2 * BEYOND)) / (PLACES - 1);
  const { count, least, most } = CURVATURES;
  const curvatures = [
    0,
    ...Array.from(
      { length: count },
      (_, k) => (least * (most / least) ** (k / (count - 1))) / (span / 2) ** 2,
    ),
  ];
  return Array.from({ length: PLACES }, (_, i) => from + i * step).flatMap((place) =>
    curvatures.map((curvature): GridPoint => {
      const relative = positions.map((position) => 1 + curvature * (position - place) ** 2);
      const logSum = relative.reduce((sum, h, j) => sum + at(places, j).freedom * Math.log(h), 0);
      return { place, curvature, relative, logSum };
    }),
  );
}

/**
 * Twice the logarithm of the likelihood, negative, with the scale of the variance at its best; only differences mean anything.
 *
 *   Σ df ln h + ν ln(Σ (df S/h)/ν)
 *
 * @param variances S, in the order of the grid's places
 */
export function devianceAt(
  { relative, logSum }: Pick<GridPoint, 'relative' | 'logSum'>,
  variances: readonly number[],
  freedoms: readonly number[],
): number {
  let [weighted, total] = [0, 0];
  for (const [j, variance] of variances.entries()) {
    const freedom = at(freedoms, j);
    weighted += (freedom * variance) / at(relative, j);
    total += freedom;
  }
  return logSum + total * Math.log(weighted / total);
}
