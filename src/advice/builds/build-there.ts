import type { There } from '../../calibration/elsewhere.ts';
import { TRAVEL_SCALE } from '../../calibration/parameters.ts';
import { at } from '../../numerics/at.ts';
import { si } from '../../quantities/quantity.ts';
import type { Jump } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';
import { pinForHit } from '../../sight/zero.ts';
import type { BowAndArrows } from './candidate.ts';
import { combined, covariance, type ErrorForm } from './error-form.ts';
import { plus, shiftOf, times } from './launched-readings.ts';
import { bowErrors } from './local-errors.ts';
import { type TunedBuild, tunedBuilds } from './tuned-build.ts';
import { type Uncertain, type UncertainReadings, uncertainReadings } from './uncertain-readings.ts';

/** A build as a calibration of its own needs it, on the sight that was zeroed with the base. */
export interface BuildThere {
  readonly build: TunedBuild;
  readonly there: There;
}

/** Where what the launch and the lift do is looked at, beside the zero range: so many times as far. */
const FAR = 3;

/**
 * One of the bow's candidates, with what its values may be off by over the parameters of a fit.
 *
 * Where the candidate turns into its path otherwise than the base does, it leaves the bow as if higher and at another angle: as
 * unsure of the angle as of the place of the scale, and of the height as of the peep. What the laws of lift leave open in the
 * curved path counts as the launch speed that would do the same, and a mass that nobody weighed as drag.
 *
 * @param index of the candidate
 * @throws NumericalError when an arrow falls short of three times the zero range
 */
export function buildThere(bow: BowAndArrows, index: number): BuildThere {
  const [base, ...builds] = tunedBuilds(bow);
  const [build, candidate] = [at(builds, index), at(bow.candidates, index)];
  if (base === undefined) throw new RangeError('a bow has a build of its own');
  const errors = bowErrors(bow, build.energy);
  const [scaleRatio, scaleOffset] = errors.sight;
  const { rig, values } = build;
  const far = FAR * rig.zeroRange;
  const [own, before] = [readingsAt(build, far), readingsAt(base, far)];
  const jump = jumpOf(before, own, bow.identity);
  const scale = base.rig.scale ?? TRAVEL_SCALE;
  const perAngle = (-scale.direction * rig.geometry.peepToPin) / scale.travelPerUnit;
  const { dragScale, mass } = rig.conditions.arrow;
  const forms: readonly ErrorForm[] = [
    combined([
      [1, build.errors.speed],
      [1 / pinPerSpeed(rig, far), liftOnly(before, own)],
    ]),
    combined([
      [1, build.errors.drag],
      [-dragScale / mass, build.errors.mass],
    ]),
    combined([
      [1, build.errors.peep],
      [-1, jump.rise.error],
    ]),
    scaleRatio,
    combined([
      [1, scaleOffset],
      [perAngle, jump.angle.error],
    ]),
    base.errors.speed,
    base.errors.drag,
    base.errors.peep,
  ];
  const jumping = withJump({ rise: si(jump.rise.value), angle: si(jump.angle.value) });
  return {
    build,
    there: {
      rig: jumping(candidate.rig),
      calibrated: jumping(rig),
      values,
      covariance: forms.map((row) => forms.map((column) => covariance(row, column))),
    },
  };
}

const withJump =
  (jump: Jump) =>
  (rig: Rig): Rig => ({ ...rig, geometry: { ...rig.geometry, jump } });

/** A ring and a wind that no answer here hangs on. */
const UNASKED = { ring: 0.2, crosswind: 0 };

const readingsAt = (build: TunedBuild, range: number): UncertainReadings =>
  uncertainReadings(build, { ...UNASKED, ranges: [range] });

const NONE: Uncertain = { value: 0, error: new Map() };

/** The straight line through what the launch does at the zero range and far beyond it. */
function jumpOf(
  base: UncertainReadings,
  own: UncertainReadings,
  identity: string,
): { readonly rise: Uncertain; readonly angle: Uncertain } {
  if (own.launch === null || base.launch === null) return { rise: NONE, angle: NONE };
  const { zeroRange } = own.build.rig;
  const shift = (i: number): Uncertain =>
    shiftOf(at(own.launch ?? [], i), at(base.launch ?? [], i), identity);
  const [far, zero] = [shift(0), shift(1)];
  const angle = times(1 / ((FAR - 1) * zeroRange), plus(far, -1, zero));
  return { angle, rise: plus(zero, -zeroRange, angle) };
}

/** What the laws of lift leave open of the pin, beyond what they do for the base, m. */
const liftOnly = (base: UncertainReadings, own: UncertainReadings): ErrorForm => {
  const pin = ({ rows }: UncertainReadings): ErrorForm => at(rows, 0).pin?.error ?? new Map();
  const change = combined([
    [1, pin(own)],
    [-1, pin(base)],
  ]);
  return new Map([...change].filter(([name]) => name.startsWith('lift:')));
};

const SPEED_STEP = 0.1; // m/s

/** d(pin)/d(launch speed), m per m/s. */
function pinPerSpeed(rig: Rig, range: number): number {
  const pin = (by: number): number =>
    pinForHit({ ...rig, launchSpeed: si(rig.launchSpeed + by) }, range, 0).down;
  return (pin(SPEED_STEP) - pin(-SPEED_STEP)) / (2 * SPEED_STEP);
}
