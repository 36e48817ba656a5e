/** The part of odex 3.0.0-rc.4 that ode.ts uses; the package's own source does not compile under this project's flags. */

/** The form of the right-hand side with `rawFunction: true`. */
export type Derivative<State extends readonly number[]> = (x: number, y: State, dydx: number[]) => void;

export interface Options {
  readonly rawFunction: boolean;
  readonly denseOutput: boolean;
  readonly relativeTolerance: number | readonly number[];
  readonly absoluteTolerance: number | readonly number[];
  readonly initialStepSize: number;
  /** 0 for steps of any length. */
  readonly maxStepSize?: number;
  readonly maxSteps: number;
}

/** `State` has `dimension` elements; the solver makes its own states with as many. */
export class Solver<State extends readonly number[]> {
  constructor(derivative: Derivative<State>, dimension: number, options: Options);
  /** Best length of a step by order, first 0; empty where no step of that order was tried. */
  readonly hh: number[];
  /** Work of such a step per unit of x; the first is 0. */
  readonly w: number[];
  solve(x0: number, y0: State, x1: number): { readonly y: State };
  /** One step after another; they are made when they are asked for. */
  solutionSegments(
    x0: number,
    y0: State,
    x1: number,
  ): Iterator<{ readonly x1: number; readonly y: State }, undefined>;
}
