import { GRAIN, INCH } from '../../quantities/exact.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { ArrowParts } from './parts.ts';

/**
 * Balance point from the nock groove when it was not measured: that of the arrow below. It moves a 60 yd mark by under 0.1
 * mm.
 */
export const ASSUMED_BALANCE: Metres = si(18 * INCH);

/** Bore of a shaft over its outside diameter where only the outside was measured; common practice, no source. */
export const USUAL_BORE = 0.7;

/**
 * The plain hunting arrow that stands in when neither parts nor a drag coefficient are given: only its shape is used, with the
 * diameter that was measured. Common practice, no source: 28.5 in shaft, field point, three low vanes at 3 degrees.
 */
export const assumedParts = (diameter: Metres): ArrowParts => ({
  shaft: {
    length: si(28.5 * INCH),
    outerDiameter: diameter,
    innerDiameter: si(USUAL_BORE * diameter),
    massPerLength: si((9.5 * GRAIN) / INCH),
  },
  insert: { mass: si(20 * GRAIN), length: si(INCH) },
  point: { mass: si(125 * GRAIN), shape: 'field', length: si(1.3 * INCH) },
  nock: { mass: si(10 * GRAIN) },
  vanes: {
    count: 3,
    mass: si(7 * GRAIN),
    rootChord: si(2.1 * INCH),
    tipChord: si(0.9 * INCH),
    height: si(0.5 * INCH),
    thickness: si(0.03 * INCH),
    fromNock: si(INCH),
    angle: si((3 * Math.PI) / 180),
    turn: 'right',
  },
});
