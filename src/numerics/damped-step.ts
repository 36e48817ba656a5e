import { at } from './at.ts';
import { matrixColumn, type Rows, solveUpper, times, triangularFactor } from './linear-algebra.ts';
import { NumericalError } from './numerical-error.ts';

/** Residuals taken as linear around a place: r + J s, in scaled steps of the parameters that are free to move. */
export interface Linearised {
  readonly jacobian: Rows;
  /** Indices of the parameters that are free. */
  readonly free: readonly number[];
  /** For every parameter, free or not, the length that its column of the Jacobian is divided by. */
  readonly scales: readonly number[];
  /** Triangular factor of the scaled Jacobian with Q'r beside it. */
  readonly factor: Rows;
}

export interface DampedStep {
  /** Change of every parameter, 0 for those that are not free. */
  readonly step: readonly number[];
  /** Indices of the parameters that the equations moved: the free ones less those that met a bound. */
  readonly moving: readonly number[];
  /** Triangular factor of the damped equations of those, without a right-hand side. */
  readonly triangle: Rows;
}

export const squares = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0);

/** The root of the sum of squares of each column. */
export const columnLengths = (jacobian: Rows): number[] =>
  (jacobian[0] ?? []).map((_, j) => Math.sqrt(jacobian.reduce((sum, row) => sum + at(row, j) ** 2, 0)));

/** J'v. */
export const transposedTimes = (jacobian: Rows, v: readonly number[]): number[] =>
  (jacobian[0] ?? []).map((_, j) => jacobian.reduce((sum, row, i) => sum + at(row, j) * at(v, i), 0));

/** Residuals taken as linear where they and their Jacobian are known, factored once for every damping. */
export function linearise(
  jacobian: Rows,
  residuals: readonly number[],
  scales: readonly number[],
  free: readonly number[],
): Linearised {
  const rows = jacobian.map((row, i) => [...free.map((j) => at(row, j) / at(scales, j)), at(residuals, i)]);
  return { jacobian, free, scales, factor: triangularFactor(rows).slice(0, free.length) };
}

const triangleOf = (factor: Rows): Rows => factor.map((row) => row.slice(0, factor.length));
const besideOf = (factor: Rows): number[] => matrixColumn(factor, factor.length);

/** The part of the residuals that some step of the free parameters would take away: its sum of squares. */
export const reducible = ({ factor }: Linearised): number => squares(besideOf(factor));

/**
 * The step that minimises |r + J s|^2 + damping |D s|^2 within bounds: parameters that it would take beyond one are put
 * there, and the others solved for again.
 *
 * @param allowed the change nearest to a wanted one that the bounds of parameter j leave
 * @throws NumericalError 'singular' with no damping and dependent columns
 */
export function dampedStep(
  { factor, free, scales }: Linearised,
  damping: number,
  allowed: (change: number, j: number) => number,
): DampedStep {
  const root = Math.sqrt(damping);
  const step = scales.map(() => 0);
  let beside = besideOf(factor);
  let columns = [...free.keys()];
  for (;;) {
    const equations = factor.map((row, i) => [...columns.map((a) => at(row, a)), at(beside, i)]);
    const dampings = columns.map((a) => [...columns.map((b) => (a === b ? root : 0)), 0]);
    const damped = triangularFactor([...equations, ...dampings]).slice(0, columns.length);
    const triangle = triangleOf(damped);
    const scaled = solveUpper(
      triangle,
      besideOf(damped).map((value) => -value),
    );
    const beyond = new Set<number>();
    for (const [k, a] of columns.entries()) {
      const j = at(free, a);
      const wanted = at(scaled, k) / at(scales, j);
      step[j] = allowed(wanted, j);
      if (step[j] !== wanted) beyond.add(a);
    }
    if (beyond.size === 0) return { step, moving: columns.map((a) => at(free, a)), triangle };
    beside = beside.map((value, i) =>
      [...beyond].reduce((sum, a) => {
        const j = at(free, a);
        return sum + at(at(factor, i), a) * at(step, j) * at(scales, j);
      }, value),
    );
    columns = columns.filter((a) => !beyond.has(a));
  }
}

/** By how much the linear residuals fall in sum of squares over a step of the free parameters. */
export function predictedReduction(problem: Linearised, step: readonly number[]): number {
  const { factor, free, scales } = problem;
  const scaled = free.map((j) => at(step, j) * at(scales, j));
  const beside = besideOf(factor);
  const left = times(triangleOf(factor), scaled).map((value, i) => value + at(beside, i));
  return squares(beside) - squares(left);
}

/**
 * Second-order correction of a damped step: the same equations, solved for the second derivative of the residuals along the
 * step.
 *
 * @param curvature second derivative of the residuals along `step`
 * @source Transtrum, Sethna, Improvements to the Levenberg-Marquardt algorithm, arXiv:1201.5885 (2012), eq. 13
 */
export function acceleration(
  { jacobian, scales }: Linearised,
  { moving, triangle }: DampedStep,
  curvature: readonly number[],
): number[] {
  const pull = transposedTimes(jacobian, curvature);
  const z: number[] = [];
  for (const [a, j] of moving.entries()) {
    const solved = z.reduce((sum, value, b) => sum + at(at(triangle, b), a) * value, 0);
    z.push((-at(pull, j) / at(scales, j) - solved) / at(at(triangle, a), a));
  }
  const scaled = solveUpper(triangle, z);
  const found = scales.map(() => 0);
  for (const [a, j] of moving.entries()) found[j] = at(scaled, a) / at(scales, j);
  return found;
}

/** The length of a step in scaled parameters. */
export const scaledLength = ({ scales }: Linearised, step: readonly number[]): number =>
  Math.sqrt(squares(step.map((value, j) => value * at(scales, j))));

/**
 * (J'J)^-1: the covariance of the parameters for residuals of unit variance.
 *
 * @param accuracy relative error of the columns of the Jacobian; a column that the others explain to within ten times that is
 *   taken to be one of them
 * @throws NumericalError 'singular' when a parameter, or a combination of them, changes no residual
 */
export function covarianceOf(jacobian: Rows, accuracy: number): number[][] {
  const lengths = columnLengths(jacobian);
  const scaled = jacobian.map((row) => row.map((value, j) => value / (lengths[j] || 1)));
  const R = triangularFactor(scaled).slice(0, lengths.length);
  const alone = R.findIndex((row, j) => Math.abs(at(row, j)) <= 10 * accuracy);
  if (alone >= 0)
    throw new NumericalError('singular', `parameter ${alone} changes nothing that the others do not`);
  const columns = R.map((_, j) =>
    solveUpper(
      R,
      R.map((_, i) => (i === j ? 1 : 0)),
    ),
  );
  return lengths.map((lengthA, a) =>
    lengths.map((lengthB, b) => {
      const products = columns.reduce((sum, column) => sum + at(column, a) * at(column, b), 0);
      return products / (lengthA * lengthB);
    }),
  );
}
