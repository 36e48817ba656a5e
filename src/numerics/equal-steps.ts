import { NumericalError } from './numerical-error.ts';
import type { Derivative, Integrator } from './ode.ts';

/**
 * An integrator of dy/dx = f(x, y) in equal steps: the classical rule of fourth order.
 *
 *   y(x + h) = y + h (k₁ + 2 k₂ + 2 k₃ + k₄)/6
 *
 * What it gives is a smooth function of where it starts, without the last digits' jumps of a rule that chooses its steps: so the
 * difference of two neighbouring solutions is right to the share that one of them is, however near they are.
 *
 * @param dimension length of the state
 * @param longest step, in units of x; as few as will do are made
 * @throws NumericalError 'non-finite' from `advance` where the state at the end is not finite
 * @source Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I, 2nd ed. 1993, section II.1, table 1.2
 */
export function createEqualSteps<State extends readonly number[]>(
  derivative: Derivative<State>,
  dimension: number,
  longest: number,
): Integrator<State> {
  const list = (): number[] => Array.from({ length: dimension }, () => 0.5);
  const [k1, k2, k3, k4] = [list(), list(), list(), list()];
  let calls = 0;

  return {
    advance(x0, y0, x1) {
      const steps = Math.ceil(Math.abs(x1 - x0) / longest);
      const h = (x1 - x0) / steps;
      const y = copyOf(y0);
      const trial = copyOf(y0);
      for (let step = 0; step < steps; step++) {
        const x = x0 + step * h;
        derivative(x, y, k1);
        shift(trial, y, h / 2, k1);
        derivative(x + h / 2, trial, k2);
        shift(trial, y, h / 2, k2);
        derivative(x + h / 2, trial, k3);
        shift(trial, y, h, k3);
        derivative(x + h, trial, k4);
        for (let i = 0; i < dimension; i++)
          y[i] =
            Number(y[i]) + (h / 6) * (Number(k1[i]) + 2 * (Number(k2[i]) + Number(k3[i])) + Number(k4[i]));
      }
      calls += 4 * steps;
      if (!y.every(Number.isFinite))
        throw new NumericalError('non-finite', `the state is not finite between x = ${x0} and ${x1}`, x0);
      return y;
    },
    evaluations: () => calls,
  };
}

/**
 * y + h k into `into`. A component that is missing comes out as no number, and the end of the advance says so: to look for it
 * here would put every number into a box, for four times the time.
 */
function shift(into: number[], y: readonly number[], h: number, k: readonly number[]): void {
  for (let i = 0; i < into.length; i++) into[i] = Number(y[i]) + h * Number(k[i]);
}

/** A copy has as many elements as the original, which is all that the type of a state says. */
const copyOf = <State extends readonly number[]>(state: State): State & number[] =>
  state.slice() as readonly number[] as State & number[];
