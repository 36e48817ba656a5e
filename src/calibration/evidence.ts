import { at } from '../numerics/at.ts';
import { choleskyFactor } from '../numerics/cholesky.ts';
import type { Converged } from '../numerics/least-squares.ts';
import type { Rows } from '../numerics/linear-algebra.ts';
import type { Prior } from './parameters.ts';

/**
 * Logarithm of the chance density of what was measured under a fit's priors, but for a constant that all fits to the same
 * measurements share.
 *
 *   ln p = -chi^2/2 + ln det C/2 - Σ ln sd_prior
 *
 * chi^2 with the priors' pull, C the covariance of the parameters: Laplace's approximation, exact for a straight model.
 *
 * @source MacKay, Information Theory, Inference, and Learning Algorithms, 2003, equation 28.10
 */
export function logEvidence({ sumOfSquares, covariance }: Converged, priors: readonly Prior[]): number {
  // Divided by its own diagonal, so that no unit makes it ill-conditioned.
  const sds = covariance.map((row, i) => Math.sqrt(at(row, i)));
  const scaled = covariance.map((row, i) => row.map((value, j) => value / (at(sds, i) * at(sds, j))));
  const factor = choleskyFactor(scaled);
  return priors.reduce(
    (sum, { sd }, i) => sum + Math.log((at(at(factor, i), i) * at(sds, i)) / sd),
    -sumOfSquares / 2,
  );
}

/** Spread about one place when a share of the chance is at another: (1 - q) C1 + q (C2 + d d'). */
export function mixedCovariance(
  here: Pick<Converged, 'parameters' | 'covariance'>,
  there: Pick<Converged, 'parameters' | 'covariance'>,
  share: number,
): Rows {
  const apart = here.parameters.map((value, i) => at(there.parameters, i) - value);
  return here.covariance.map((row, i) =>
    row.map(
      (value, j) =>
        (1 - share) * value + share * (at(at(there.covariance, i), j) + at(apart, i) * at(apart, j)),
    ),
  );
}

/** The same of one number. */
export const mixedVariance = (here: Prior, there: Prior, share: number): number =>
  (1 - share) * here.sd ** 2 + share * (there.sd ** 2 + (there.value - here.value) ** 2);
