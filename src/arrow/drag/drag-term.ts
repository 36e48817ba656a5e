import { type SquareMetres, si } from '../../quantities/quantity.ts';

export type DragTermName =
  | 'shaft-friction'
  | 'vane-friction'
  | 'vane-edges'
  | 'helical'
  | 'point'
  | 'blades'
  | 'collar'
  | 'base';

/** One term of the build-up. */
export interface DragTerm {
  readonly name: DragTermName;
  /** On the shaft's cross-section. */
  readonly coefficient: number;
  /** The Reynolds number the term's own law takes, on the length that law names. */
  readonly reynolds: number;
  /** The area the term's own coefficient is on. */
  readonly area: SquareMetres;
  /** Where the law comes from. */
  readonly source: string;
}

/**
 * Suction on a flat base, and on a square rear edge, as a coefficient on its own area.
 *
 * Of a vane's square rear edge it is an assumption: another published law has 0.02 to 0.04 there, which is 4 % of the sum,
 * inside the uncertainty of the whole.
 *
 * @source Fleeman, Tactical Missile Design, at low speed
 */
export const BASE_SUCTION = 0.12;

/** What every term needs: the cross-section, and Reynolds number per metre of length. */
export interface FlowScale {
  readonly section: number;
  readonly perMetre: number;
}

/** @param dragArea drag force / dynamic pressure @param length the Reynolds number's */
export const term = (
  name: DragTermName,
  dragArea: number,
  length: number,
  area: number,
  { section, perMetre }: FlowScale,
  source: string,
): DragTerm => ({
  name,
  coefficient: dragArea / section,
  reynolds: perMetre * length,
  area: si(area),
  source,
});

/**
 * Friction of both sides of N thin plates, turbulent: 2 Cf (1 + 2 t / c) N A.
 *
 * @source Mandell, Caporaso and Bengen, 1973, chapter 3
 */
export function plateFriction(area: number, thickness: number, chord: number, friction: number): number {
  return 2 * friction * (1 + (2 * thickness) / chord) * area;
}
