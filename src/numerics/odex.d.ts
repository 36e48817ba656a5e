/** The part of odex 3.0.0-rc.4 that ode.ts uses; the package's own source does not compile under this project's flags. */

/** The form of the right-hand side with `rawFunction: true`. */
export type Derivative<State extends readonly number[]> = (x: number, y: State, dydx: number[]) => void;

export interface Options {
  readonly rawFunction: boolean;
  readonly denseOutput: boolean;
  readonly relativeTolerance: number;
  readonly absoluteTolerance: number;
  readonly initialStepSize: number;
  readonly maxSteps: number;
}

/** `State` has `dimension` elements; the solver makes its own states with as many. */
export class Solver<State extends readonly number[]> {
  constructor(derivative: Derivative<State>, dimension: number, options: Options);
  /** Best length of a step by order; empty where no step of that order was tried. */
  readonly hh: number[];
  solve(x0: number, y0: State, x1: number): { readonly y: State };
}
