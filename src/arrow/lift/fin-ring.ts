import { finRingSlope, finSlope } from './normal-force.ts';
import { bodyInterference, type RollInterference } from './spin.ts';
import { finArea, type TrapezoidFin } from './trapezoid-fin.ts';

/** A ring of equal fins, with what a model that follows each strip needs. */
export interface FinRing {
  readonly count: number;
  readonly fin: TrapezoidFin;
  /** Normal-force slope of one fin on its own area, without the body. */
  readonly slope: number;
  /**
   * Normal-force slope of the ring on pi d^2 / 4, with the body, in the air it stands in; the wake of blades ahead is not in
   * it.
   */
  readonly ringSlope: number;
  /** Share of the full dynamic pressure that it feels in the shaft's layer; 1 for blades ahead of it. */
  readonly immersion: number;
  /** Where its force acts, from the bottom of the nock groove. */
  readonly place: number;
  /** To the shaft, right helical positive. */
  readonly angle: number;
  readonly roll: RollInterference;
}

/** A ring with its slopes, from its fin and how it stands. @param section of the shaft, π d²/4 */
export const finRing = (
  fin: TrapezoidFin,
  stand: Pick<FinRing, 'count' | 'place' | 'angle' | 'immersion'>,
  section: number,
): FinRing => ({
  ...stand,
  fin,
  slope: finSlope(fin, finArea(fin)),
  ringSlope: stand.immersion * finRingSlope(fin, stand.count, section),
  roll: bodyInterference(fin),
});
