import { at } from '../numerics/at.ts';
import { leastSquares } from '../numerics/least-squares.ts';
import type { Rows } from '../numerics/linear-algebra.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import { DomainError } from '../quantities/domain-error.ts';
import { DECIDED, type Estimate } from '../quantities/estimate.ts';
import { GRAIN } from '../quantities/exact.ts';
import { type Joules, type Kilograms, type MetresPerSecond, type Ratio, si } from '../quantities/quantity.ts';

/** The speed at which one bow launched an arrow of known mass. */
export interface ChronographedArrow {
  readonly name?: string;
  readonly mass: Kilograms;
  readonly speed: MetresPerSecond;
  readonly speedSd: MetresPerSecond;
}

/** What is believed of a virtual mass before it is measured: normal in its logarithm, so never negative. */
export interface VirtualMassPrior {
  readonly value: Kilograms;
  /** Standard deviation of the logarithm: 0.45 means two times in three within a factor of 1.57. */
  readonly logSd: number;
}

/**
 * For a compound: 85 gr, from 54 to 133 gr two times in three. With the 350 gr arrow of the usual rating that is 80 % of
 * the energy in the arrow, 72 to 87 %. No measurement of a compound's virtual mass could be found; the efficiency is from
 * memory.
 */
export const COMPOUND_VIRTUAL_MASS: VirtualMassPrior = { value: si(85 * GRAIN), logSd: 0.45 };

/** Energy that a bow gives to arrow and virtual mass together, and that virtual mass. */
export interface BowEnergy {
  readonly energy: Joules;
  /** The part of limbs, cams and string that moves as if it flew with the arrow. */
  readonly virtualMass: Kilograms;
  /** Of (ln energy, ln virtual mass). */
  readonly logCovariance: Rows;
  /** The arrows it was fitted to, first as given. */
  readonly arrows: readonly ChronographedArrow[];
  /** Whether the arrows halved what was uncertain about the virtual mass; else it is mostly the prior. */
  readonly virtualMassFrom: 'arrows' | 'prior';
}

/** So small that the energy of one arrow and a prior comes out as their closed form, to rounding. */
const GRADIENT_TOLERANCE = 1e-14;

/**
 * Energy and virtual mass of a bow from the arrows it was chronographed with.
 *
 *   v = sqrt(2 E / (m + K))
 *
 * Minimises Σ((ln v − ln model)/(sd/v))² + ((ln K − ln prior)/sd)² over ln E and ln K. One arrow takes K from the prior;
 * two or more of different mass measure it. When more arrows than unknowns scatter beyond their stated errors, the
 * covariance is widened to what is seen.
 *
 * @param prior null to let the arrows alone decide
 * @throws DomainError without an arrow, or without prior and two different masses; NumericalError when no positive K fits
 * @source Klopsteg's virtual mass, as in Hickman, Nagler and Klopsteg, Archery: The Technical Side, 1947
 * @checked reference/string-weight
 */
export function fitBowEnergy(
  arrows: readonly ChronographedArrow[],
  prior: VirtualMassPrior | null = COMPOUND_VIRTUAL_MASS,
): BowEnergy {
  const [first] = arrows;
  if (first === undefined) throw new DomainError('chronographed arrows', 0, 'at least one');
  if (prior === null && new Set(arrows.map(({ mass }) => mass)).size < 2)
    throw new DomainError(
      'different masses of chronographed arrows',
      1,
      'two or more, unless the virtual mass is known',
    );
  for (const { mass, speed, speedSd } of arrows)
    if (!(mass > 0 && speed > 0 && speedSd > 0))
      throw new DomainError('mass, speed and its uncertainty', Math.min(mass, speed, speedSd), 'above 0');

  const startMass = prior?.value ?? COMPOUND_VIRTUAL_MASS.value;
  const residuals = ([lnE = 0, lnK = 0]: readonly number[]): readonly number[] => [
    ...arrows.map(
      ({ mass, speed, speedSd }) => ((Math.log(speed) - logSpeed(lnE, lnK, mass)) * speed) / speedSd,
    ),
    ...(prior === null ? [] : [(lnK - Math.log(prior.value)) / prior.logSd]),
  ];
  const start = [Math.log(((first.mass + startMass) * first.speed ** 2) / 2), Math.log(startMass)];
  const jacobian = ([, lnK = 0]: readonly number[]): Rows => [
    ...arrows.map(({ mass, speed, speedSd }) => {
      const [byE, byK] = gradient(mass, Math.exp(lnK));
      return [(-byE * speed) / speedSd, (-byK * speed) / speedSd];
    }),
    ...(prior === null ? [] : [[0, 1 / prior.logSd]]),
  ];
  const solution = leastSquares(residuals, start, { jacobian, gradientTolerance: GRADIENT_TOLERANCE });
  if (solution.outcome !== 'converged')
    throw new NumericalError(
      'not-converged',
      `no virtual mass fits the chronographed arrows: ${solution.reason}`,
    );
  const [lnE = Number.NaN, lnK = Number.NaN] = solution.parameters;
  const freedom = arrows.length + (prior === null ? 0 : 1) - 2;
  const widening = freedom > 0 ? Math.max(1, solution.sumOfSquares / freedom) : 1;
  const logCovariance = solution.covariance.map((row) => row.map((value) => value * widening));
  const leftOfPrior = prior === null ? 0 : Math.sqrt(at(at(logCovariance, 1), 1)) / prior.logSd;
  return {
    energy: si(Math.exp(lnE)),
    virtualMass: si(Math.exp(lnK)),
    logCovariance,
    arrows,
    virtualMassFrom: leftOfPrior <= DECIDED ? 'arrows' : 'prior',
  };
}

const logSpeed = (lnE: number, lnK: number, mass: number): number =>
  (Math.LN2 + lnE - Math.log(mass + Math.exp(lnK))) / 2;

/** d(ln v)/d(ln E, ln K) for an arrow of a mass: (1/2, −K/(2(m + K))). */
export const logSpeedGradient = ({ virtualMass: K }: BowEnergy, mass: Kilograms): readonly [number, number] =>
  gradient(mass, K);

const gradient = (mass: number, K: number): readonly [number, number] => [0.5, -K / (2 * (mass + K))];

/** Standard deviation of gᵀ(ln E, ln K). */
function spreadOf({ logCovariance: C }: BowEnergy, [a, b]: readonly [number, number]): number {
  const c = (i: number, j: number): number => at(at(C, i), j);
  return Math.sqrt(Math.max(0, a * a * c(0, 0) + 2 * a * b * c(0, 1) + b * b * c(1, 1)));
}

/** Launch speed of an arrow of any mass from the bow. Heavier is slower. */
export function launchSpeed(bow: BowEnergy, mass: Kilograms): Estimate<MetresPerSecond> {
  const speed = Math.sqrt((2 * bow.energy) / (mass + bow.virtualMass));
  return { value: si(speed), sd: si(speed * spreadOf(bow, logSpeedGradient(bow, mass))) };
}

/** Share of the bow's energy that goes into an arrow: m/(m + K). */
export function efficiency(bow: BowEnergy, mass: Kilograms): Estimate<Ratio> {
  const share = mass / (mass + bow.virtualMass);
  return { value: si(share), sd: si(spreadOf(bow, [0, share * (share - 1)])) };
}

/** What one more kilogram of arrow changes the speed by, m/s per kg, below 0: −v/(2(m + K)). */
export function speedPerMass(bow: BowEnergy, mass: Kilograms): Estimate {
  const { virtualMass: K, energy: E } = bow;
  const slope = -Math.sqrt((2 * E) / (mass + K)) / (2 * (mass + K));
  const share = K / (mass + K);
  return { value: slope, sd: spreadOf(bow, [slope / 2, -1.5 * share * slope]) };
}

/** Kinetic energy of the arrow at launch: E m/(m + K). */
export function launchEnergy(bow: BowEnergy, mass: Kilograms): Estimate<Joules> {
  const share = mass / (mass + bow.virtualMass);
  const energy = bow.energy * share;
  return { value: si(energy), sd: si(energy * spreadOf(bow, [1, share - 1])) };
}
