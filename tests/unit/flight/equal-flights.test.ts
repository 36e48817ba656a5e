import { describe, expect, it } from 'vitest';
import { calm } from '../../../src/atmosphere/wind.ts';
import type { FlightConditions } from '../../../src/flight/conditions.ts';
import { launchFromEye } from '../../../src/flight/launch.ts';
import { equalFlyer, type Flyer, flyer } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from './hunting-arrow.ts';
import { conditionsOf, pointArrow, spinningArrow } from './point-arrow.ts';

const ranges = [18.288, 45.72, 91.44];
const draggedMore = (conditions: FlightConditions): FlightConditions => ({
  ...conditions,
  arrow: { ...conditions.arrow, dragScale: 1.01 * conditions.arrow.dragScale },
});
const heights = ({ entered }: Flyer, speed: number, angle: number): readonly number[] =>
  entered(launchFromEye(si(speed), si(angle)), ranges).map(([height]) => height);

describe('flights in equal steps', () => {
  const { flying } = huntingArrow();
  // Vanes that spin an arrow up within a metre: steps of 10 m would let its spin grow without end.
  const { attitude } = spinningArrow;
  const quick = { ...spinningArrow, attitude: { ...(attitude ?? expect.fail()), spinUp: si<'kg/m2'>(1) } };
  const wind = { ...calm, tail: si<'m/s'>(-4), across: si<'m/s'>(3) };
  it.each([
    ['a point with drag', conditionsOf(pointArrow(0.02, 0.0055, 2.5))],
    ['a spinning arrow', conditionsOf(spinningArrow)],
    ['an arrow with a drag curve, uphill', conditionsOf(flying, { slope: si(0.4) })],
    ['an arrow in wind', conditionsOf(flying, { wind })],
    ['an arrow that spins up within a metre', conditionsOf(quick)],
  ])('of %s: what speed, drag and angle change is right to 2e-5', (_, conditions) => {
    const changes = (make: (conditions: FlightConditions) => Flyer): readonly number[] => {
      const [flight, dragged] = [make(conditions), make(draggedMore(conditions))];
      const usual = heights(flight, 75, 0.02);
      return [heights(flight, 75.5, 0.02), heights(flight, 75, 0.021), heights(dragged, 75, 0.02)].flatMap(
        (changed) => changed.map((height, i) => height - (usual[i] ?? Number.NaN)),
      );
    };
    const exact = changes((there) => flyer(there, 1e-11));
    const equal = changes(equalFlyer);
    expect(equal).toHaveLength(9);
    for (const [i, change] of equal.entries())
      expect(Math.abs(change / (exact[i] ?? Number.NaN) - 1)).toBeLessThan(2e-5 /* relative */);
  });
});
