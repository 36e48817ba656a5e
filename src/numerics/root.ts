import { NumericalError } from './numerical-error.ts';

export interface SearchOptions {
  /** How far the answer may lie from the true one, in units of x; a few roundings of x are added. */
  readonly tolerance: number;
  readonly maxIterations?: number;
}

/** A simple root takes about ten, a triple one, to which interpolation creeps, 130. */
const MAX_ITERATIONS = 200;

const finiteValue = (f: (x: number) => number, x: number): number => {
  const value = f(x);
  if (!Number.isFinite(value)) throw new NumericalError('non-finite', `the function is ${value} at ${x}`, x);
  return value;
};

/**
 * A root of a continuous f between lo and hi, where f has opposite signs or is 0.
 *
 * Inverse quadratic interpolation or the secant where they shrink the bracket fast enough, bisection where not.
 *
 * @returns x with a change of sign of f within `tolerance` + 4 roundings of x
 * @throws NumericalError 'not-bracketed', 'non-finite' when f is not finite, 'not-converged' after `maxIterations`
 * @source Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4
 */
export function bracketedRoot(
  f: (x: number) => number,
  lo: number,
  hi: number,
  { tolerance, maxIterations = MAX_ITERATIONS }: SearchOptions,
): number {
  let best = hi;
  let fBest = finiteValue(f, best);
  let previous = lo;
  let fPrevious = finiteValue(f, previous);
  if (fPrevious === 0) return previous;
  if (fBest === 0) return best;
  if (fBest > 0 === fPrevious > 0)
    throw new NumericalError(
      'not-bracketed',
      `no change of sign between ${lo} and ${hi}: ${fPrevious} and ${fBest}`,
    );

  // `opposite` is the other end of the bracket, `previous` the estimate before the best one.
  let opposite = previous;
  let fOpposite = fPrevious;
  let step = best - previous;
  let stepBefore = step;

  for (let iteration = 0; iteration < maxIterations; iteration++) {
    if (Math.abs(fOpposite) < Math.abs(fBest)) {
      [previous, best, opposite] = [best, opposite, best];
      [fPrevious, fBest, fOpposite] = [fBest, fOpposite, fBest];
    }
    const allowed = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const half = (opposite - best) / 2;
    if (Math.abs(half) <= allowed || fBest === 0) return best;

    if (Math.abs(stepBefore) >= allowed && Math.abs(fPrevious) > Math.abs(fBest)) {
      const [p, q] = interpolatedStep(best, fBest, previous, fPrevious, opposite, fOpposite);
      if (2 * p < Math.min(3 * half * q - Math.abs(allowed * q), Math.abs(stepBefore * q))) {
        stepBefore = step;
        step = p / q;
      } else {
        stepBefore = half;
        step = half;
      }
    } else {
      stepBefore = half;
      step = half;
    }

    previous = best;
    fPrevious = fBest;
    best += Math.abs(step) > allowed ? step : Math.sign(half) * allowed;
    fBest = finiteValue(f, best);
    if (fBest > 0 === fOpposite > 0) {
      opposite = previous;
      fOpposite = fPrevious;
      step = best - previous;
      stepBefore = step;
    }
  }
  throw new NumericalError('not-converged', `no root to ${tolerance} in ${maxIterations} iterations`, best);
}

/** The step from b to the interpolated root as p / q with p not negative: secant for two points, inverse quadratic for three. */
function interpolatedStep(
  b: number,
  fb: number,
  a: number,
  fa: number,
  c: number,
  fc: number,
): [number, number] {
  const s = fb / fa;
  let p: number;
  let q: number;
  if (a === c) {
    p = (c - b) * s;
    q = 1 - s;
  } else {
    const t = fa / fc;
    const r = fb / fc;
    p = s * ((c - b) * t * (t - r) - (b - a) * (r - 1));
    q = (t - 1) * (r - 1) * (s - 1);
  }
  return p > 0 ? [p, -q] : [-p, q];
}

/** The smaller part of the golden section, which shrinks a bracket by the same factor at every step. */
const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * Where f is least between lo and hi, for an f with one minimum there (with several: one of them; with none inside: an
 * end, approached to within the tolerance).
 *
 * Parabola through the three lowest points where that converges, golden section where not. f near its minimum is flat, so
 * a tolerance below about 1.5e-8 |x| only chases rounding; it is raised to that.
 *
 * @returns x within about `tolerance` of the minimum
 * @throws NumericalError 'not-bracketed' unless lo < hi, 'non-finite', 'not-converged'
 * @source Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5
 */
export function minimumOf(
  f: (x: number) => number,
  lo: number,
  hi: number,
  { tolerance, maxIterations = MAX_ITERATIONS }: SearchOptions,
): number {
  if (!(lo < hi)) throw new NumericalError('not-bracketed', `${lo} to ${hi} is not an interval`);
  let a = lo;
  let b = hi;
  let x = a + GOLDEN * (b - a);
  let fx = finiteValue(f, x);
  // The second and third lowest points.
  let [w, v, fw, fv] = [x, x, fx, fx];
  let step = 0;
  let stepBefore = 0;

  for (let iteration = 0; iteration < maxIterations; iteration++) {
    const middle = (a + b) / 2;
    const allowed = Math.sqrt(Number.EPSILON) * Math.abs(x) + tolerance / 3;
    if (Math.abs(x - middle) <= 2 * allowed - (b - a) / 2) return x;

    const r = (x - w) * (fx - fv);
    const q = (x - v) * (fx - fw);
    const denominator = 2 * (q - r);
    const parabolic = -((x - v) * q - (x - w) * r) / denominator;
    const inside = x + parabolic > a && x + parabolic < b;
    if (Math.abs(stepBefore) > allowed && inside && Math.abs(parabolic) < Math.abs(stepBefore) / 2) {
      stepBefore = step;
      const u = x + parabolic;
      step = u - a < 2 * allowed || b - u < 2 * allowed ? Math.sign(middle - x) * allowed : parabolic;
    } else {
      stepBefore = x < middle ? b - x : a - x;
      step = GOLDEN * stepBefore;
    }

    const u = x + (Math.abs(step) >= allowed ? step : (Math.sign(step) || 1) * allowed);
    const fu = finiteValue(f, u);
    if (fu <= fx) {
      if (u < x) b = x;
      else a = x;
      [v, fv, w, fw, x, fx] = [w, fw, x, fx, u, fu];
    } else {
      if (u < x) a = u;
      else b = u;
      if (fu <= fw || w === x) [v, fv, w, fw] = [w, fw, u, fu];
      else if (fu <= fv || v === x || v === w) [v, fv] = [u, fu];
    }
  }
  throw new NumericalError('not-converged', `no minimum to ${tolerance} in ${maxIterations} iterations`, x);
}
