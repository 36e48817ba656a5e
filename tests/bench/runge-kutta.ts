import type { Derivative } from '../../src/numerics/ode.ts';

/**
 * The classical fourth-order method in equal steps.
 *
 * @source Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I, section II.1
 */
export function rungeKutta(
  derivative: Derivative,
  start: readonly number[],
  from: number,
  to: number,
  steps: number,
): number[] {
  const size = start.length;
  const y = [...start];
  const trial = [...start];
  const [k1, k2, k3, k4] = [0, 1, 2, 3].map(() => new Array<number>(size).fill(0));
  if (k1 === undefined || k2 === undefined || k3 === undefined || k4 === undefined) return y;
  const h = (to - from) / steps;
  const shift = (k: readonly number[], by: number): void => {
    for (let i = 0; i < size; i++) trial[i] = (y[i] ?? 0) + by * (k[i] ?? 0);
  };
  for (let step = 0; step < steps; step++) {
    const x = from + step * h;
    derivative(x, y, k1);
    shift(k1, h / 2);
    derivative(x + h / 2, trial, k2);
    shift(k2, h / 2);
    derivative(x + h / 2, trial, k3);
    shift(k3, h);
    derivative(x + h, trial, k4);
    for (let i = 0; i < size; i++)
      y[i] = (y[i] ?? 0) + (h / 6) * ((k1[i] ?? 0) + 2 * (k2[i] ?? 0) + 2 * (k3[i] ?? 0) + (k4[i] ?? 0));
  }
  return y;
}
