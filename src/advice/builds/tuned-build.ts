import type { Arrow } from '../../arrow/arrow.ts';
import { type BowEnergy, fitBowEnergy } from '../../bow/energy.ts';
import { estimateOf } from '../../calibration/fit.ts';
import { type ParameterValues, withParameters } from '../../calibration/parameters.ts';
import { type Metres, type Newtons, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import type { BowAndArrows, Candidate } from './candidate.ts';
import { bowErrors, type LocalErrors } from './local-errors.ts';

/** Where a build's launch speed comes from. */
type SpeedSource = 'calibrated' | 'chronographed' | 'rated' | 'bow energy';

/** A build with its best values in its rig, and what those values may be wrong by. */
export interface TunedBuild {
  readonly name: string;
  readonly arrow: Arrow;
  readonly rig: Rig;
  /** The values of the fit's parameters that are in the rig. */
  readonly values: ParameterValues;
  readonly errors: LocalErrors;
  readonly speedFrom: SpeedSource;
  readonly energy: BowEnergy;
  readonly powerStroke: Metres;
  readonly peakDraw: Newtons | null;
}

/**
 * The builds of one bow, its own first: launch speeds from the bow's energy where nothing chronographed them, drag as far
 * calibrated as the base's marks bear on it.
 *
 *   v′ = v sqrt((m + K)/(m′ + K))
 *
 * The bow's energy is tied to the base build's own (calibrated) speed, so that the base here is the base of every other answer.
 */
export function tunedBuilds(bow: BowAndArrows): readonly TunedBuild[] {
  const { calibration, powerStroke, peakDraw } = bow;
  const energy = energyOf(bow);
  const errors = bowErrors(bow, energy);
  const shared = { energy, powerStroke, peakDraw };
  const given = bow.rated ? 'rated' : 'chronographed';
  const base: TunedBuild = {
    ...shared,
    name: bow.name,
    arrow: bow.arrow,
    rig: calibration.rig,
    values: calibration.values,
    errors: errors.base,
    speedFrom: calibration.residuals.length > 0 ? 'calibrated' : given,
  };
  const others = errors.candidates.flatMap(({ errors: own, dragShare }, i): readonly TunedBuild[] => {
    const candidate = bow.candidates[i];
    if (candidate === undefined) return [];
    const values = tunedValues(bow, energy, candidate, dragShare);
    return [
      {
        ...shared,
        name: candidate.name,
        arrow: candidate.arrow,
        rig: tunedRig(candidate, values),
        values,
        errors: own,
        speedFrom: candidate.speed === null ? 'bow energy' : 'chronographed',
      },
    ];
  });
  return [base, ...others];
}

/** From the base arrow first, then every other that was chronographed. */
function energyOf({ name, calibration, otherShots, candidates, virtualMass }: BowAndArrows): BowEnergy {
  const { rig } = calibration;
  return fitBowEnergy(
    [
      {
        name,
        mass: rig.conditions.arrow.mass,
        speed: rig.launchSpeed,
        speedSd: si(estimateOf(calibration, 'launch_speed').sd),
      },
      ...otherShots,
      ...candidates.flatMap(({ name: own, arrow, speed }) =>
        speed === null ? [] : [{ name: own, mass: arrow.flying.mass, speed: speed.value, speedSd: speed.sd }],
      ),
    ],
    virtualMass,
  );
}

function tunedValues(
  { calibration }: BowAndArrows,
  { virtualMass: K }: BowEnergy,
  { arrow, speed }: Candidate,
  dragShare: number,
): ParameterValues {
  const { values, rig } = calibration;
  const predicted = rig.launchSpeed * Math.sqrt((rig.conditions.arrow.mass + K) / (arrow.flying.mass + K));
  return {
    ...values,
    launch_speed: speed?.value ?? predicted,
    drag_scale: 1 + dragShare * (values.drag_scale - 1),
  };
}

function tunedRig({ rig }: Candidate, values: ParameterValues): Rig {
  const tuned = withParameters(rig, values);
  return rig.scale === null ? { ...tuned, scale: null } : tuned;
}
