import type { Arrow, ArrowChoices } from '../../../src/arrow/arrow.ts';
import { buildArrow } from '../../../src/arrow/build.ts';
import type { Point, Turn } from '../../../src/arrow/parts/parts.ts';
import { si } from '../../../src/quantities/quantity.ts';

const INCH = 0.0254; // m
const GRAIN = 64.79891e-6; // kg
const DEGREE = Math.PI / 180;

export interface Variation {
  readonly turn?: Turn;
  readonly angle?: number;
  readonly count?: number;
  readonly shape?: Point['shape'];
  readonly choices?: ArrowChoices;
}

/**
 * The common hunting arrow of the independent rigid-body figures, from parts: 450 gr, 28.5 in shaft of 0.245 in, balance 0.4555 m
 * from the nock, 2.1/0.9 in vanes 0.5 in tall at 3 degrees, drag coefficient 2.5. Inertias, slope and margin then agree within
 * 1.5 %, with the vanes in free air as there.
 */
export const huntingArrow = ({
  turn = 'right',
  angle = 3 * DEGREE,
  count = 3,
  shape = 'field',
  choices = {},
}: Variation = {}): Arrow =>
  buildArrow({
    parts: {
      shaft: {
        length: si(28.5 * INCH),
        outerDiameter: si(0.245 * INCH),
        innerDiameter: si(0.166 * INCH),
        massPerLength: si((9 * GRAIN) / INCH),
      },
      insert: { mass: si(20 * GRAIN), length: si(INCH) },
      point: { mass: si(125 * GRAIN), shape, length: si(1.3 * INCH) },
      nock: { mass: si(10 * GRAIN) },
      vanes: {
        count,
        mass: si(7 * GRAIN),
        rootChord: si(2.1 * INCH),
        tipChord: si(0.9 * INCH),
        height: si(0.5 * INCH),
        thickness: si(0.03 * INCH),
        fromNock: si(INCH),
        angle: si(angle),
        turn,
      },
    },
    totals: { mass: si(450 * GRAIN), balance: si(0.4555), dragCoefficient: 2.5 },
    choices: { liftLossesCounted: false, ...choices },
  });
