import type { Disturbance } from '../../flight/rigid-launch.ts';
import { at } from '../../numerics/at.ts';
import { leastSquares } from '../../numerics/least-squares.ts';
import { NumericalError } from '../../numerics/numerical-error.ts';
import { DECIDED } from '../../quantities/estimate.ts';
import { DEGREE, INCH } from '../../quantities/exact.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { Fletching, StartFlights } from './start-flights.ts';

/** A hole in paper: where the nock's tear lies from the point's. */
export interface Tear {
  /** Ahead of the grip's deepest point. */
  readonly paper: Metres;
  readonly nockRight: Metres;
  readonly nockHigh: Metres;
  readonly arrow: Fletching;
  /** Shots that tore alike. */
  readonly count: number;
}

/** A group of bare shafts beside one of fletched arrows. */
export interface BareOffset {
  readonly range: Metres;
  /** Bare less fletched. */
  readonly right: Metres;
  readonly high: Metres;
  /** Of the two groups alone, in one direction. */
  readonly sd: Metres;
}

const COMPONENTS = ['tailLeft', 'tailUp', 'tailLeftRate', 'tailRisingRate'] as const;
type StartComponent = (typeof COMPONENTS)[number];

/** How an arrow leaves the string, with the standard error of each component and whether the shots decide it. */
export interface LaunchEstimate {
  readonly start: Disturbance;
  readonly sd: Readonly<Record<StartComponent, number>>;
  readonly decided: readonly StartComponent[];
}

/** What a start may be before any shot: rad, rad/s; assumed. */
const PRIOR: Readonly<Record<StartComponent, number>> = {
  tailLeft: DEGREE,
  tailUp: DEGREE,
  tailLeftRate: 1,
  tailRisingRate: 1,
};
/** A tear is read to this, and the bending of the shaft adds this to every tear at one distance; both assumed. */
export const READING_SD = 0.06 * INCH;
export const BENDING_SD = 0.1 * INCH;
/** How uncertain the air on a bare shaft is, as a share of its offset: see the figures for other cross-flows and noses. */
const AIR_ON_BARE = 0.15;
/** Relative error of the residuals: flights differ by rounding of some nanometres, and a tear is read to millimetres. */
const PRECISION = 1e-6;
/** The search ends when no small step would take this share of the residuals away: far below a standard error. */
const CLOSE_ENOUGH = 1e-3;

/**
 * How the arrow leaves the string, from tears and from bare shafts: the start that explains them best, together with how bad
 * starts usually are. Angle and rate cannot be told from one tear, which fixes little more than their sum.
 *
 * @throws NumericalError when no start explains the shots; DomainError when a start comes to be looked at in which a bare shaft
 *   flies too far aslant
 */
export function launchFrom(
  flights: StartFlights,
  tears: readonly Tear[],
  offsets: readonly BareOffset[],
): LaunchEstimate {
  const pooled = pooledTears(tears);
  const residuals = (values: readonly number[]): readonly number[] => {
    const start = startFrom(values);
    return [
      ...pooled.flatMap((tear) => {
        const { right, high } = flights.tear(start, tear.paper, tear.arrow);
        const sd = Math.hypot(READING_SD / Math.sqrt(tear.count), BENDING_SD);
        return [(right - tear.nockRight) / sd, (high - tear.nockHigh) / sd];
      }),
      ...offsets.flatMap((offset) => {
        const { right, high } = flights.offset(start, offset.range);
        const sd = Math.hypot(offset.sd, AIR_ON_BARE * Math.hypot(offset.right, offset.high));
        return [(right - offset.right) / sd, (high - offset.high) / sd];
      }),
      ...COMPONENTS.map((name) => start[name] / PRIOR[name]),
    ];
  };
  const typical = COMPONENTS.map((name) => PRIOR[name]);
  const found = leastSquares(residuals, [0, 0, 0, 0], {
    typical,
    precision: PRECISION,
    gradientTolerance: CLOSE_ENOUGH,
  });
  if (found.outcome !== 'converged')
    throw new NumericalError('not-converged', `no start explains the shots: ${found.reason}`);
  const sd = (i: number): number => Math.sqrt(at(at(found.covariance, i), i));
  const errors = { tailLeft: sd(0), tailUp: sd(1), tailLeftRate: sd(2), tailRisingRate: sd(3) };
  return {
    start: startFrom(found.parameters),
    sd: errors,
    decided: COMPONENTS.filter((name) => errors[name] < DECIDED * PRIOR[name]),
  };
}

/** Tears at one distance bend alike, so that more of them only read it better: they count as one. */
function pooledTears(tears: readonly Tear[]): readonly Tear[] {
  const pooled: Tear[] = [];
  for (const tear of tears) {
    const same = pooled.findIndex(({ paper, arrow }) => paper === tear.paper && arrow === tear.arrow);
    const before = pooled[same];
    if (before === undefined) pooled.push(tear);
    else {
      const count = before.count + tear.count;
      const mean = (a: number, b: number): Metres => si((before.count * a + tear.count * b) / count);
      pooled[same] = {
        ...tear,
        count,
        nockRight: mean(before.nockRight, tear.nockRight),
        nockHigh: mean(before.nockHigh, tear.nockHigh),
      };
    }
  }
  return pooled;
}

const startFrom = (values: readonly number[]): Disturbance => ({
  tailLeft: si(at(values, 0)),
  tailUp: si(at(values, 1)),
  tailLeftRate: si(at(values, 2)),
  tailRisingRate: si(at(values, 3)),
});

/** A small start, to see what a tear makes of it; rad, rad/s. */
const SMALL_ANGLE = 0.1 * DEGREE;
const SMALL_RATE = 0.1;

/** The two ends of what one tear may mean: all of it angle of the tail to the left (or high), or all of it rate. */
export function endsOfTear(
  flights: StartFlights,
  { paper, arrow, nockRight, nockHigh }: Tear,
  axis: 'right' | 'high' = 'right',
): { readonly ifAngle: number; readonly ifRate: number } {
  const tearOf = (start: Partial<Disturbance>): number =>
    flights.tear({ ...startFrom([0, 0, 0, 0]), ...start }, paper, arrow)[axis];
  const sideways = axis === 'right';
  const clean = tearOf({});
  const turned = tearOf(sideways ? { tailLeft: si(SMALL_ANGLE) } : { tailUp: si(SMALL_ANGLE) });
  const turning = tearOf(sideways ? { tailLeftRate: si(SMALL_RATE) } : { tailRisingRate: si(SMALL_RATE) });
  const torn = (sideways ? nockRight : nockHigh) - clean;
  return {
    ifAngle: (torn * SMALL_ANGLE) / (turned - clean),
    ifRate: (torn * SMALL_RATE) / (turning - clean),
  };
}
