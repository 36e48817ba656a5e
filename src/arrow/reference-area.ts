import { type SquareMetres, si } from '../quantities/quantity.ts';

/** The area that every coefficient of an arrow is on: the shaft's cross-section, S = pi d^2 / 4. */
export const referenceArea = (diameter: number): SquareMetres => si((Math.PI / 4) * diameter * diameter);
