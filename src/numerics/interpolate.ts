import { floatAt } from './at.ts';
import { NumericalError } from './numerical-error.ts';

const requireFinite = (values: readonly number[], what: string): void => {
  const bad = values.find((value) => !Number.isFinite(value));
  if (bad !== undefined) throw new NumericalError('non-finite', `${what} holds ${bad}`);
};

/**
 * The natural cubic spline through values at x0, x0 + step, ...: continuous to the second derivative everywhere.
 *
 * Beyond either end it levels off over one step, v + m h (t - t^3 + t^4/2) with end value v, end slope m and t the distance in
 * steps, and stays constant at v + m h/2 from there: the polynomial that meets the natural end (no curvature) and the
 * constant to the second derivative, so that a solver sees no kink.
 *
 * @returns a function of x in constant time, without allocation; error of order step^4 inside, step^2 in the end intervals of a
 *   function that curves there
 * @throws NumericalError for fewer than 2 values, a step that is not positive or numbers that are not finite; the function
 *   throws 'non-finite' for NaN
 * @source natural end conditions and tridiagonal system: de Boor, A Practical Guide to Splines, 1978, chapter IV
 */
export function uniformCubic(x0: number, step: number, values: readonly number[]): (x: number) => number {
  requireFinite([x0, step, ...values], 'a table');
  const last = values.length - 1;
  if (last < 1 || !(step > 0))
    throw new NumericalError('singular', `${values.length} values at steps of ${step} are not a table`);
  const y = Float64Array.from(values);

  // Half the second derivatives in steps, m[i-1] + 4 m[i] + m[i+1] = 3 (y[i-1] - 2 y[i] + y[i+1]), by elimination.
  const m = new Float64Array(last + 1);
  const factor = new Float64Array(last + 1);
  for (let i = 1; i < last; i++) {
    const pivot = 1 / (4 - floatAt(factor, i - 1));
    factor[i] = pivot;
    m[i] = pivot * (3 * (floatAt(y, i - 1) - 2 * floatAt(y, i) + floatAt(y, i + 1)) - floatAt(m, i - 1));
  }
  for (let i = last - 1; i > 0; i--) m[i] = floatAt(m, i) - floatAt(factor, i) * floatAt(m, i + 1);

  const cubic = new Float64Array(4 * last);
  for (let i = 0; i < last; i++) {
    const slope = floatAt(y, i + 1) - floatAt(y, i) - (2 * floatAt(m, i) + floatAt(m, i + 1)) / 3;
    cubic[4 * i] = floatAt(y, i);
    cubic[4 * i + 1] = slope;
    cubic[4 * i + 2] = floatAt(m, i);
    cubic[4 * i + 3] = (floatAt(m, i + 1) - floatAt(m, i)) / 3;
  }
  const perStep = 1 / step;
  const [first, end] = [floatAt(y, 0), floatAt(y, last)];
  const firstSlope = floatAt(cubic, 1);
  const endSlope = end - floatAt(y, last - 1) + (floatAt(m, last - 1) + 2 * floatAt(m, last)) / 3;
  const levelled = (t: number): number => (t < 1 ? t - t * t * t * (1 - t / 2) : 0.5);

  return (x) => {
    const s = (x - x0) * perStep;
    if (!(s >= 0)) {
      if (s < 0) return first - firstSlope * levelled(-s);
      throw new NumericalError('non-finite', `cannot read a table at ${x}`);
    }
    if (s >= last) return end + endSlope * levelled(s - last);
    const i = Math.floor(s);
    const t = s - i;
    const k = 4 * i;
    return (
      floatAt(cubic, k) +
      t * (floatAt(cubic, k + 1) + t * (floatAt(cubic, k + 2) + t * floatAt(cubic, k + 3)))
    );
  };
}

/**
 * The cubic through tabulated points that rises where they rise and falls where they fall: no value between two neighbours
 * lies outside theirs. Continuous to the first derivative; beyond the ends it stays at the end value.
 *
 * Slopes are those of the parabola through three neighbours (of the secant at the ends), 0 at a turn, then shortened into
 * the circle of radius 3 secants in which a cubic is monotone.
 *
 * @param xs strictly increasing, at least 2
 * @throws NumericalError 'singular' for xs that do not increase or counts that differ, 'non-finite'
 * @source Fritsch, Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238-246, section 4
 */
export function monotoneCubic(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  requireFinite([...xs, ...ys], 'a table');
  const x = Float64Array.from(xs);
  const y = Float64Array.from(ys);
  const last = x.length - 1;
  const width = Float64Array.from({ length: Math.max(last, 0) }, (_, i) => floatAt(x, i + 1) - floatAt(x, i));
  if (last < 1 || y.length !== x.length || !width.every((h) => h > 0))
    throw new NumericalError(
      'singular',
      `${xs.length} places that do not increase, or not ${xs.length} values`,
    );
  const secant = width.map((h, i) => (floatAt(y, i + 1) - floatAt(y, i)) / h);

  const slope = x.map((_, i) => {
    if (i === 0) return floatAt(secant, 0);
    if (i === last) return floatAt(secant, last - 1);
    const [left, right, hLeft, hRight] = [
      floatAt(secant, i - 1),
      floatAt(secant, i),
      floatAt(width, i - 1),
      floatAt(width, i),
    ];
    return left * right <= 0 ? 0 : (left * hRight + right * hLeft) / (hLeft + hRight);
  });
  for (let i = 0; i < last; i++) {
    const d = floatAt(secant, i);
    if (d === 0) continue; // both slopes are 0 already, or an end's, which is this secant
    const radius = Math.hypot(floatAt(slope, i) / d, floatAt(slope, i + 1) / d);
    if (radius <= 3) continue;
    slope[i] = (floatAt(slope, i) * 3) / radius;
    slope[i + 1] = (floatAt(slope, i + 1) * 3) / radius;
  }

  return (place) => {
    if (Number.isNaN(place)) throw new NumericalError('non-finite', 'cannot read a table at NaN');
    if (place <= floatAt(x, 0)) return floatAt(y, 0);
    if (place >= floatAt(x, last)) return floatAt(y, last);
    let [i, above] = [0, last];
    while (above - i > 1) {
      const middle = (i + above) >> 1;
      if (floatAt(x, middle) <= place) i = middle;
      else above = middle;
    }
    const h = floatAt(width, i);
    const t = (place - floatAt(x, i)) / h;
    const excess0 = h * (floatAt(slope, i) - floatAt(secant, i));
    const excess1 = h * (floatAt(slope, i + 1) - floatAt(secant, i));
    const straight = floatAt(y, i) + t * h * floatAt(secant, i);
    return straight + t * (1 - t) * ((1 - t) * excess0 - t * excess1);
  };
}

/**
 * The cubic with given value and first derivative at both ends of an interval.
 *
 * Error at most h^4/384 of the fourth derivative of the function it stands for.
 *
 * @param h length of the interval
 * @param t place in it, 0 at the start to 1 at the end
 * @param d0 first derivative, with respect to x (not t), at the start; `d1` at the end
 */
export function cubicHermite(h: number, t: number, y0: number, d0: number, y1: number, d1: number): number {
  const value = y1 - y0 - h * d0;
  const slope = h * (d1 - d0);
  return y0 + t * (h * d0 + t * (3 * value - slope + t * (slope - 2 * value)));
}

/**
 * The fifth-degree polynomial with given value, first and second derivative at both ends of an interval.
 *
 * Error at most (h/2)^6/720 of the sixth derivative of the function it stands for.
 *
 * @param h length of the interval
 * @param t place in it, 0 at the start to 1 at the end
 * @param d0 first and `c0` second derivative, with respect to x (not t), at the start; `d1`, `c1` at the end
 */
export function quinticHermite(
  h: number,
  t: number,
  y0: number,
  d0: number,
  c0: number,
  y1: number,
  d1: number,
  c1: number,
): number {
  // What the parabola from the start leaves at the end, in value, slope and curvature.
  const value = y1 - y0 - h * (d0 + (h * c0) / 2);
  const slope = h * (d1 - d0 - h * c0);
  const bend = h * h * (c1 - c0);
  const a = 10 * value - 4 * slope + bend / 2;
  const b = -15 * value + 7 * slope - bend;
  const c = 6 * value - 3 * slope + bend / 2;
  return y0 + t * (h * d0 + t * ((h * h * c0) / 2 + t * (a + t * (b + t * c))));
}
