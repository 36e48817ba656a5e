import type { Kilograms, Metres, NewtonSquareMetres, Ratio } from '../quantities/quantity.ts';
import type { BoundaryLayer } from './drag/boundary-layer.ts';
import type { DragPoint } from './drag/drag-curve.ts';
import type { DragTerm } from './drag/drag-term.ts';
import type { FlyingArrow } from './flying-arrow.ts';
import type { LiftingSurfaces } from './lift/lifting.ts';
import type { ArrowParts } from './parts/parts.ts';
import type { Piece } from './parts/pieces.ts';

/** What was measured on the finished arrow. */
export interface ArrowTotals {
  readonly mass?: Kilograms | undefined;
  /** Of the shaft, outside. */
  readonly diameter?: Metres | undefined;
  /** Balance point from the bottom of the nock groove. */
  readonly balance?: Metres | undefined;
  /** Bottom of the nock groove to the front end of the shaft. */
  readonly length?: Metres | undefined;
  /** On the shaft's cross-section: one value, or values by Reynolds number on the diameter. Replaces the build-up. */
  readonly dragCoefficient?: number | readonly DragPoint[] | undefined;
}

export interface ArrowChoices {
  /** Along the shaft; default `transition`, which gives published arrows their turbulent drag within 5 %. */
  readonly boundaryLayer?: BoundaryLayer | undefined;
  /** Share of the ideal side force of a spinning shaft, 0 to 1; default 0: it has not been measured on arrows. */
  readonly sideForce?: number | undefined;
  /** Count the shaft's interference with turning vanes; default true. False gives strips alone, 5 to 20 % more spin. */
  readonly shaftSlowsSpin?: boolean | undefined;
  /**
   * Count what the shaft's layer and the wake of blades take of the vanes' lift; default true. False gives strips in free air.
   */
  readonly liftLossesCounted?: boolean | undefined;
}

/** A measured total and what the parts add up to. */
export interface TotalDifference {
  readonly what: 'mass' | 'balance' | 'diameter' | 'length';
  /** kg or m. */
  readonly measured: number;
  readonly fromParts: number;
}

/** What was assumed because nothing given says otherwise. */
export type Assumption =
  | 'drag of a plain hunting arrow'
  | 'vanes of a plain hunting arrow'
  | 'balance of a plain hunting arrow'
  | 'usual three blades';

/** An arrow as built, and what follows from it. Places are from the bottom of the nock groove, forward. */
export interface Arrow {
  readonly flying: FlyingArrow;
  /** Parts with the measured diameter; null when only totals are known. */
  readonly parts: ArrowParts | null;
  /** Groove to the front end of the shaft. */
  readonly length: Metres | null;
  readonly frontOfCentre: Ratio | null;
  readonly centreOfPressure: Metres | null;
  /** Balance point minus centre of pressure: positive when stable. */
  readonly staticMargin: Metres | null;
  /** Of the shaft, when its static deflection is known. */
  readonly stiffness: NewtonSquareMetres | null;
  /** Each thing that weighs, as listed (not scaled to the measured mass). */
  readonly pieces: readonly Piece[];
  readonly surfaces: LiftingSurfaces | null;
  readonly differences: readonly TotalDifference[];
  readonly assumptions: readonly Assumption[];
  readonly dragFrom: 'parts' | 'given' | 'assumed';
  readonly boundaryLayer: BoundaryLayer;
  /** The build-up's terms, also beside a given coefficient; null when the parts are not known. */
  readonly dragTerms: ((layer: BoundaryLayer, reynolds: number) => readonly DragTerm[]) | null;
}
