import { INCH } from '../../quantities/exact.ts';
import type { Kilograms, Metres } from '../../quantities/quantity.ts';
import { si } from '../../quantities/quantity.ts';
import { bladeFin, vaneFin } from '../lift/fins.ts';
import { chordRadiusSquared, finArea } from '../lift/trapezoid-fin.ts';
import type { ArrowParts, Collar, Nock, Shaft } from './parts.ts';

/** One thing that weighs, reduced to a rod along the shaft. */
export interface Piece {
  readonly name: string;
  readonly mass: Kilograms;
  /** Middle of its mass from the bottom of the nock groove. */
  readonly place: Metres;
  /** Length over which the mass is spread evenly. */
  readonly length: Metres;
  /** Square of its radius of gyration about the shaft, m2. */
  readonly gyrationSquared: number;
}

/** Groove bottom to the shaft's rear end. */
const NOCK_LENGTH = 0.25 * INCH; // common practice, no source: press-fit nocks are 0.2 to 0.35 in
export const nockLength = ({ length }: Nock): number => length ?? NOCK_LENGTH;

/** A collar is a tube half a millimetre thick unless described. Common practice, no source. */
export const collarDiameter = ({ diameter }: Collar, { outerDiameter }: Shaft): number =>
  diameter ?? outerDiameter + 1e-3;

/** The trade's arrow length: groove bottom to the front end of the shaft. */
export const arrowLength = ({ shaft, nock }: ArrowParts): Metres => si(nockLength(nock) + shaft.length);

/**
 * Middle of a point's mass ahead of the shaft's end, as a share of its visible length: the body would have it at about half
 * of it, the stem inside the shaft draws it back. Moving it by a tenth of an inch moves the balance of a 125 gr point on a 450 gr
 * arrow by 0.03 in.
 */
const POINT_MIDDLE = 0.25;

/** Radius of gyration squared over radius squared: 0.5 for a cylinder, 0.3 for a cone; a point is between. */
const POINT_GYRATION = 0.4;

const STEEL_DENSITY = 7850; // kg/m3, blades

/** Every piece of the arrow with its place, in order from the nock forward for the fixed ones, others last. */
export function piecesOf(parts: ArrowParts): readonly Piece[] {
  const { shaft, insert, collar, nock, vanes, others = [] } = parts;
  const rear = nockLength(nock);
  const front = arrowLength(parts);
  const outer = shaft.outerDiameter / 2;
  const inner = shaft.innerDiameter / 2;
  const pieces: Piece[] = [
    // Ears behind the groove balance the stem in the shaft, so the mass sits between groove and shaft.
    piece('nock', nock.mass, rear / 2, 2 * rear, outer ** 2 / 2),
    piece(
      'shaft',
      shaft.massPerLength * shaft.length,
      rear + shaft.length / 2,
      shaft.length,
      (outer ** 2 + inner ** 2) / 2,
    ),
  ];
  if (vanes !== undefined) {
    const fin = vaneFin(vanes, outer);
    const middle = vanes.fromNock + vaneMassFromRear(fin.rootChord, fin.tipChord, fin.sweep);
    pieces.push(
      piece(
        'vanes',
        vanes.count * vanes.mass,
        middle,
        vanes.rootChord,
        chordRadiusSquared(fin) / finArea(fin),
      ),
    );
  }
  if (insert !== undefined)
    pieces.push(piece('insert', insert.mass, front - insert.length / 2, insert.length, inner ** 2 / 2));
  if (collar !== undefined)
    pieces.push(
      piece(
        'collar',
        collar.mass,
        front - collar.length / 2,
        collar.length,
        (outer ** 2 + (collarDiameter(collar, shaft) / 2) ** 2) / 2,
      ),
    );
  pieces.push(...pointPieces(parts, front, outer));
  pieces.push(...others.map(({ name, mass, fromNock }) => piece(name, mass, fromNock, 0, outer ** 2)));
  return pieces;
}

function pointPieces(parts: ArrowParts, front: number, outer: number): Piece[] {
  const { point } = parts;
  const place = front + POINT_MIDDLE * point.length;
  const whole = (mass: number) => piece('point', mass, place, point.length, POINT_GYRATION * outer ** 2);
  const blades = bladeFin(point, outer);
  if (blades === null) return [whole(point.mass)];
  const { fin, count, thickness } = blades;
  // A ferrule always remains; without this a small mass with large blades would leave it none.
  const mass = Math.min(0.6 * point.mass, count * finArea(fin) * thickness * STEEL_DENSITY);
  return [
    whole(point.mass - mass),
    piece('blades', mass, front + fin.rootChord / 3, fin.rootChord, chordRadiusSquared(fin) / finArea(fin)),
  ];
}

/** Centroid of a trapezoid's area, ahead of the rear end of its root. */
function vaneMassFromRear(root: number, tip: number, sweep: number): number {
  const fromFront = (sweep * (root + 2 * tip) + root * root + root * tip + tip * tip) / (3 * (root + tip));
  return root - fromFront;
}

const piece = (
  name: string,
  mass: number,
  place: number,
  length: number,
  gyrationSquared: number,
): Piece => ({
  name,
  mass: si(mass),
  place: si(place),
  length: si(length),
  gyrationSquared,
});
