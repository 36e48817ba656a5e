import type { Kilograms, KilogramsPerMetre, Metres, Radians } from '../../quantities/quantity.ts';

/*
 * The arrow as a parts list. Datum: the bottom of the nock groove, x forward. The shaft's rear end is one nock length
 * ahead of it, so that the trade's arrow length (groove to end of shaft) = nock length + shaft length.
 */

export interface Shaft {
  /** The cut tube, end to end. */
  readonly length: Metres;
  readonly outerDiameter: Metres;
  readonly innerDiameter: Metres;
  readonly massPerLength: KilogramsPerMetre;
  /** Static spine: sag at mid-span under 880 g on 28 in, in metres (a 300 spine is 0.300 in). */
  readonly deflection?: Metres | undefined;
}

/** Glued inside the front end, flush with it. */
interface Insert {
  readonly mass: Kilograms;
  readonly length: Metres;
}

/** A sleeve over the front end of the shaft, flush with it. */
export interface Collar {
  readonly mass: Kilograms;
  readonly length: Metres;
  /** Outside; default: the shaft's plus 1 mm. */
  readonly diameter?: Metres | undefined;
}

export type PointShape = 'field' | 'bullet' | 'blunt' | 'mechanical' | 'fixed_blade';

/** Blades of a fixed-blade head: triangles that widen from front to rear and end where the point meets the shaft. */
export interface Blades {
  readonly count: number;
  /** Along the shaft. */
  readonly length: Metres;
  /** Edge to edge over the whole head, as the trade sells them (cutting diameter). */
  readonly cuttingDiameter: Metres;
  readonly thickness: Metres;
}

/** Everything ahead of the shaft's front end, with its stem inside. */
export interface Point {
  readonly mass: Kilograms;
  readonly shape: PointShape;
  /** The visible part, ahead of the shaft. */
  readonly length: Metres;
  readonly blades?: Blades | undefined;
}

export interface Nock {
  readonly mass: Kilograms;
  /** From the bottom of the groove to the shaft's rear end; default 0.25 in. */
  readonly length?: Metres | undefined;
}

export type Turn = 'right' | 'left' | 'none';
export type LeadingEdge = 'square' | 'round';
export type TrailingEdge = 'square' | 'round' | 'tapered';

export interface Vanes {
  readonly count: number;
  /** Mass of EACH vane: the trade weighs one. */
  readonly mass: Kilograms;
  readonly rootChord: Metres;
  readonly tipChord: Metres;
  /** From the shaft's surface to the vane's edge. */
  readonly height: Metres;
  readonly thickness: Metres;
  /** Rear end of the vane from the bottom of the nock groove. */
  readonly fromNock: Metres;
  /** To the shaft's axis, 0 or more. */
  readonly angle: Radians;
  readonly turn: Turn;
  /** How far the front of the tip lies behind the front of the root; default rootChord - tipChord (upright rear edge). */
  readonly sweep?: Metres | undefined;
  /** Default round. */
  readonly leadingEdge?: LeadingEdge | undefined;
  /** Default square. */
  readonly trailingEdge?: TrailingEdge | undefined;
}

/** A wrap, a lighted nock's battery, paint: anything with a mass and a place. */
interface OtherPart {
  readonly name: string;
  readonly mass: Kilograms;
  /** Middle of the part from the bottom of the nock groove. */
  readonly fromNock: Metres;
}

export interface ArrowParts {
  readonly shaft: Shaft;
  readonly insert?: Insert | undefined;
  readonly collar?: Collar | undefined;
  readonly point: Point;
  readonly nock: Nock;
  readonly vanes?: Vanes | undefined;
  readonly others?: readonly OtherPart[] | undefined;
}
