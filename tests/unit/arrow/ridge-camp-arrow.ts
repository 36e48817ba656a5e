import type { ArrowParts, Point, Vanes } from '../../../src/arrow/parts/parts.ts';
import { si } from '../../../src/quantities/quantity.ts';

export const INCH = 0.0254; // m
export const GRAIN = 64.79891e-6; // kg
export const DEGREE = Math.PI / 180;

export const ridgeCampVanes: Vanes = {
  count: 3,
  mass: si(7 * GRAIN),
  rootChord: si(2.1 * INCH),
  tipChord: si(0.9 * INCH),
  height: si(0.5 * INCH),
  thickness: si(0.03 * INCH),
  fromNock: si(INCH),
  angle: si(3 * DEGREE),
  turn: 'right',
};

export const fieldPoint: Point = { mass: si(125 * GRAIN), shape: 'field', length: si(1.3 * INCH) };

/** An invented hunting arrow of about 455 gr: the parts list of the setup file's example. */
export const ridgeCampParts: ArrowParts = {
  shaft: {
    length: si(28.5 * INCH),
    outerDiameter: si(0.246 * INCH),
    innerDiameter: si(0.166 * INCH),
    massPerLength: si((9.5 * GRAIN) / INCH),
    deflection: si(0.3 * INCH),
  },
  insert: { mass: si(20 * GRAIN), length: si(INCH) },
  point: fieldPoint,
  nock: { mass: si(10 * GRAIN) },
  vanes: ridgeCampVanes,
  others: [{ name: 'wrap', mass: si(8 * GRAIN), fromNock: si(4 * INCH) }],
};
