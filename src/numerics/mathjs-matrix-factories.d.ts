import type { Matrix as MathjsMatrix } from 'mathjs';

/** mathjs exports the factories of its matrices but does not type them; these are the ones, and the parts of them, that we use. */
declare module 'mathjs' {
  type Binary<Result> = (a: number, b: number) => Result;
  type Rows = readonly (readonly number[])[];

  export interface DenseMatrixClass {
    new (parts: { readonly data: Rows; readonly size: readonly [number, number] }): MathjsMatrix;
  }
  export interface MatrixArithmetic {
    /** Chooses among the implementations of one function by the types of its arguments. */
    readonly typed: (name: string, implementations: Readonly<Record<string, unknown>>) => unknown;
    readonly matrix: (data: Rows) => MathjsMatrix;
    readonly DenseMatrix: DenseMatrixClass;
    readonly zeros: (size: readonly [number]) => number[];
    readonly identity: (size: readonly [number]) => MathjsMatrix;
    readonly addScalar: Binary<number>;
    readonly subtractScalar: Binary<number>;
    readonly multiplyScalar: Binary<number>;
    readonly divideScalar: Binary<number>;
    readonly equal: Binary<boolean>;
    readonly equalScalar: Binary<boolean>;
    readonly isZero: (a: number) => boolean;
    readonly sign: (a: number) => number;
    readonly sqrt: (a: number) => number;
    readonly conj: (a: number) => number;
    readonly unaryMinus: (a: number) => number;
    readonly complex: (a: number) => number;
  }
  export function createMatrixClass(nothing: Record<string, never>): object;
  export function createDenseMatrixClass(parts: { Matrix: object; config: object }): DenseMatrixClass;
  export function createQr(parts: MatrixArithmetic): (m: MathjsMatrix) => { readonly R: MathjsMatrix };
  export function createUsolve(
    parts: MatrixArithmetic,
  ): (u: MathjsMatrix, b: readonly number[]) => MathjsMatrix;
}
