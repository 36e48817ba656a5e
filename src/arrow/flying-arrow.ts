import type {
  KilogramSquareMetres,
  Kilograms,
  Metres,
  Quantity,
  Radians,
  RadiansPerMetre,
  SquareMetres,
} from '../quantities/quantity.ts';

/** Drag coefficient on the shaft's cross-section pi d^2 / 4 against the Reynolds number on the shaft's diameter. */
export interface DragCurve {
  /** Smooth (continuous first derivative), finite for every Reynolds number from 0, allocates nothing. */
  at(reynolds: number): number;
}

/** What turns the arrow, and what its turning does. Places x are from the balance point, forward positive. */
export interface Attitude {
  /** Ix, about the shaft. */
  readonly axialInertia: KilogramSquareMetres;
  /** Iy, across the shaft through the balance point. */
  readonly transverseInertia: KilogramSquareMetres;
  /** Settled spin per metre flown; right helical (clockwise from behind) positive. */
  readonly spinPerMetre: RadiansPerMetre;
  /** Spin-up length = spinUp / air density, spinUp = Ix / (0.5 N a Sigma); Infinity for an arrow without vanes. */
  readonly spinUp: Quantity<'kg/m2'>;
  /** Sum of the normal-force slopes per radian on pi d^2 / 4. */
  readonly normalSlope: number;
  /** Sum of slope times place; negative when stable. */
  readonly firstMoment: Metres;
  /** Sum of slope times place squared. */
  readonly secondMoment: SquareMetres;
  /** B_k = integral of x^k along the shaft, k = 0, 1, 2, in m, m2, m3. */
  readonly shaftMoments: readonly [number, number, number];
  /** What of the sums above the fins make; undefined where only the sums are known. */
  readonly fins?: Fins | undefined;
}

/**
 * A ring of fins as the flight sees it: its slope as counted in the sums, and its place from the balance point, forward
 * positive.
 */
export interface FinLift {
  readonly slope: number;
  readonly place: Metres;
  readonly count: number;
}

/** The fins of an arrow, and what they take from one another. */
export interface Fins {
  readonly vanes: FinLift | null;
  readonly blades: FinLift | null;
  /** Slope that the wake of the blades takes of the vanes' at small incidence, and the incidence at which half of it is taken. */
  readonly wake: { readonly slope: number; readonly halfAngle: Radians } | null;
  /**
   * Relative standard uncertainties of what the vanes lift, without the wake, of the blades' lift, and of what the wake takes.
   */
  readonly uncertainty: { readonly vanes: number; readonly blades: number; readonly wake: number };
}

/** The arrow as the flight room sees it. */
export interface FlyingArrow {
  readonly mass: Kilograms;
  /** Outside diameter of the shaft: reference length, and through pi d^2 / 4 the reference area. */
  readonly diameter: Metres;
  readonly drag: DragCurve;
  /** Factor on `drag`, 1 unless calibrated. */
  readonly dragScale: number;
  /** Null when only mass, diameter and drag are known: such an arrow flies as a point and does not spin. */
  readonly attitude: Attitude | null;
  /** Share of the ideal-circulation side force of a spinning shaft (Magnus), 0 to 1. */
  readonly sideForce: number;
  /** Balance point from the bottom of the nock groove. */
  readonly balance: Metres;
  /** Largest radius of shaft or vanes, for clearance. */
  readonly fletchRadius: Metres;
}
