import { quadraticForm } from '../../numerics/quadratic-form.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import type { LateralFit } from './lateral-fit.ts';
import { LATERAL_CAUSES, predictLateral } from './lateral-model.ts';

/** The part of the sideways miss that no windage takes out, at one range; right positive. */
export interface CurvedPart {
  readonly range: Metres;
  readonly lateral: Metres;
  readonly sd: Metres;
}

/**
 * The curved part by range (m) for the bow held by its level: the fitted plumb error and side force, and the rig's own spin.
 * Their sum is far better known than either where the groups cannot tell them apart.
 */
export function curvedPart(rig: Rig, fit: LateralFit, ranges: readonly number[]): readonly CurvedPart[] {
  const shots = ranges.map((range) => ({ range: si<'m'>(range), turn: null, cant: si<'rad'>(0) }));
  return predictLateral(rig, shots).map(({ spin, slopes }, i) => {
    const gradient = fit.unknowns.map((name) =>
      name === 'plumb' || name === 'side_force' ? (slopes[LATERAL_CAUSES.indexOf(name)] ?? 0) : 0,
    );
    const fitted = gradient.reduce((sum, slope, j) => sum + slope * (fit.values[j] ?? 0), 0);
    return {
      range: si(ranges[i] ?? Number.NaN),
      lateral: si(spin + fitted),
      sd: si(Math.sqrt(quadraticForm(fit.covariance, gradient))),
    };
  });
}
