import { type KilogramSquareMetres, type Kilograms, type Metres, si } from '../../quantities/quantity.ts';
import type { Piece } from './pieces.ts';

export interface MassProperties {
  readonly mass: Kilograms;
  /** From the bottom of the nock groove. */
  readonly balance: Metres;
  /** Ix, about the shaft. */
  readonly axialInertia: KilogramSquareMetres;
  /** Iy, across the shaft through the balance point. */
  readonly transverseInertia: KilogramSquareMetres;
}

/**
 * Mass, balance and inertia of rods along one line.
 *
 *   Ix = sum m k^2,   Iy = sum m [k^2 / 2 + l^2 / 12 + (x - x_balance)^2]
 *
 * k radius of gyration about the shaft, l length, x place of each.
 *
 * @param pieces at least one with mass
 */
export function massProperties(pieces: readonly Piece[]): MassProperties {
  const sum = (of: (piece: Piece) => number) => pieces.reduce((total, piece) => total + of(piece), 0);
  const mass = sum((piece) => piece.mass);
  const balance = sum((piece) => piece.mass * piece.place) / mass;
  return {
    mass: si(mass),
    balance: si(balance),
    axialInertia: si(sum((piece) => piece.mass * piece.gyrationSquared)),
    transverseInertia: si(
      sum(
        ({ mass: m, gyrationSquared, length, place }) =>
          m * (gyrationSquared / 2 + length ** 2 / 12 + (place - balance) ** 2),
      ),
    ),
  };
}
