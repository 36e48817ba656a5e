import { NumericalError } from './numerical-error.ts';
import type { RandomStream } from './random.ts';

/**
 * A variance of a normal sample over its true value: a number drawn from chi squared over its degrees of freedom, which need
 * not be whole.
 *
 * @param freedom degrees of freedom above 0
 * @throws NumericalError 'non-finite' for other freedom
 */
export const varianceDraw = (stream: RandomStream, freedom: number): number =>
  (2 * gammaDraw(stream, freedom / 2)) / freedom;

/**
 * A number from the gamma distribution with this shape and scale 1.
 *
 * @source Marsaglia, Tsang, ACM Trans. Math. Softw. 26 (2000) 363-372; section 6 for shapes below 1
 */
function gammaDraw(stream: RandomStream, shape: number): number {
  if (!(shape > 0)) throw new NumericalError('non-finite', `no gamma distribution of shape ${shape}`, shape);
  if (shape < 1) return gammaDraw(stream, shape + 1) * stream.uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = stream.normal();
    const v = (1 + c * z) ** 3;
    if (v > 0 && Math.log(stream.uniform()) < (z * z) / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}
