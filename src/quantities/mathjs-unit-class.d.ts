import type { UnitCtor } from 'mathjs';

/** mathjs exports the factory of its Unit class but does not type it; these are the parts of it that we use. */
declare module 'mathjs' {
  type Pair = (a: number, b: number) => number;
  export interface UnitArithmetic {
    readonly config: { readonly number: 'number'; readonly predictable: boolean };
    readonly addScalar: Pair;
    readonly subtractScalar: Pair;
    readonly multiplyScalar: Pair;
    readonly divideScalar: Pair;
    readonly pow: Pair;
    readonly abs: (x: number) => number;
    readonly fix: (x: number) => number;
    readonly round: (x: number) => number;
    readonly equal: (a: number, b: number) => boolean;
    readonly isNumeric: (x: unknown) => boolean;
    readonly format: (x: unknown) => string;
    readonly number: (x: unknown) => number;
    readonly Complex: { readonly I: number };
    readonly BigNumber: new (numerator: number, denominator: number) => object;
    readonly Fraction: new (numerator: number, denominator: number) => object;
  }
  export function createUnitClass(arithmetic: UnitArithmetic): UnitCtor;
}
