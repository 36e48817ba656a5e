import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { finArea, midChordCosine, type TrapezoidFin } from './trapezoid-fin.ts';

/**
 * Normal-force slope of a pointed nose, per radian on the body's cross-section, whatever its shape.
 *
 * @source slender-body theory (Munk)
 */
export const NOSE_SLOPE = 2;

/**
 * Normal-force slope of one fin, per radian, on a reference area; incidence square to the fin, no body.
 *
 *   2 pi (s^2 / S) / (1 + sqrt(1 + (s^2 / (A cos G))^2))
 *
 * s height, A area of the fin, G sweep of its middle line, S reference area. Low speed (Mach below 0.3).
 *
 * @source Barrowman, The practical calculation of the aerodynamic characteristics of slender finned vehicles, 1967,
 *   equation 3-6 (Diederich's form)
 * @checked reference/barrowman
 */
export function finSlope(fin: TrapezoidFin, referenceArea: number): number {
  const s2 = fin.height ** 2;
  const ratio = s2 / (finArea(fin) * midChordCosine(fin));
  return (2 * Math.PI * s2) / referenceArea / (1 + Math.sqrt(1 + ratio * ratio));
}

/**
 * What is left of the slope when many fins crowd a body, from 1 to 8 fins.
 *
 * @source Barrowman, 1967, as tabulated by Niskanen, 2013
 */
const CROWDING = [1, 1, 1, 1, 0.948, 0.913, 0.854, 0.81];

/**
 * Normal-force slope of a ring of equal fins with the body's interference.
 *
 *   (N / 2) f_N K (one fin),   K = 1 + r / (s + r)
 *
 * With one or two fins the force depends on where they stand; a spinning arrow averages it to N / 2.
 *
 * @param count 1 to 8 fins
 * @throws DomainError for another count
 * @source Barrowman and Barrowman, 1966; fit of K stated for r / (s + r) < 0.4
 * @checked reference/barrowman
 */
export function finRingSlope(fin: TrapezoidFin, count: number, referenceArea: number): number {
  if (!Number.isInteger(count) || count < 1 || count > 8)
    throw new DomainError('number of fins', count, 'a whole number, 1 to 8');
  const interference = 1 + fin.rootRadius / (fin.height + fin.rootRadius);
  return (count / 2) * at(CROWDING, count - 1) * interference * finSlope(fin, referenceArea);
}

/** A lifting part: its slope on the reference area, and where the force acts. */
export interface Lift {
  readonly slope: number;
  /** Forward positive, from any one datum. */
  readonly place: number;
}

/** Sums of slope, slope times place and slope times place squared. */
export const liftMoments = (lifts: readonly Lift[]): readonly [number, number, number] => {
  const sum = (power: number) => lifts.reduce((total, { slope, place }) => total + slope * place ** power, 0);
  return [sum(0), sum(1), sum(2)];
};

/** Where the whole normal force acts, from the datum of the lifts. */
export function centreOfPressure(lifts: readonly Lift[]): number {
  const [slope, first] = liftMoments(lifts);
  if (!(slope > 0)) throw new DomainError('normal-force slope', slope, 'above 0');
  return first / slope;
}
