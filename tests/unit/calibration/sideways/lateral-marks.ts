import type { LateralMark } from '../../../../src/calibration/sideways/lateral-mark.ts';
import { predictLateral } from '../../../../src/calibration/sideways/lateral-model.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { withArrow } from '../../advice/invented-bow.ts';

/** What really moves the arrows sideways in an invented trial. */
export interface Truth {
  readonly windage?: number;
  readonly offset?: number;
  readonly plumb?: number;
  readonly sideForce?: number;
}

export interface Shot {
  readonly range: number;
  readonly turn?: 1 | -1;
  readonly cant?: number;
}

/** Groups as the full model puts them for a bow with the true causes in it, each with the standard uncertainty given. */
export function groupsOf(
  rig: Rig,
  { windage = 0, offset = 0, plumb = 0, sideForce = 0 }: Truth,
  shots: readonly Shot[],
  sd: (range: number) => number,
): readonly LateralMark[] {
  const asShot = shots.map(({ range, turn, cant }) => ({
    range: si<'m'>(range),
    turn: turn ?? null,
    cant: si<'rad'>(cant ?? 0),
  }));
  const own = rig.conditions.arrow.sideForce;
  const flown = predictLateral(
    withArrow(rig, { sideForce: own + sideForce }),
    asShot.map((shot) => ({ ...shot, cant: si<'rad'>(shot.cant + plumb) })),
  );
  return asShot.map((shot, i) => ({
    ...shot,
    lateral: (flown[i]?.lateral ?? 0) + Math.cos(shot.cant) * (windage * shot.range + offset),
    sd: si(sd(shot.range)),
    cantSd: si(0),
    day: null,
  }));
}

/** The value of a cause in a fit. */
export const causeOf = (
  fit: { readonly unknowns: readonly string[]; readonly values: readonly number[] },
  name: string,
): number => fit.values[fit.unknowns.indexOf(name)] ?? Number.NaN;
