import { DomainError } from '../quantities/domain-error.ts';
import { GRAIN, INCH, POUND_FORCE } from '../quantities/exact.ts';
import {
  type Kilograms,
  type Metres,
  type MetresPerSecond,
  type Newtons,
  si,
} from '../quantities/quantity.ts';
import { type BowEnergy, COMPOUND_VIRTUAL_MASS, type VirtualMassPrior } from './energy.ts';

/** What a compound's maker shot to rate it. */
export interface BowRating {
  readonly speed: MetresPerSecond;
  readonly drawWeight: Newtons;
  /** Trade definition: to the grip's deepest point plus 1.75 in. */
  readonly drawLength: Metres;
  readonly arrowMass: Kilograms;
}

/**
 * The usual conditions: 70 lb of peak draw, 30 in of draw, 5 gr of arrow for each pound (350 gr), from a shooting machine,
 * the mean of at least five shots.
 *
 * @source ASTM F1544-11 (draw weight at most 70.5 lb)
 */
export const USUAL_RATING: Omit<BowRating, 'speed'> = {
  drawWeight: si(70 * POUND_FORCE),
  drawLength: si(30 * INCH),
  arrowMass: si(350 * GRAIN),
};

/** The archer's own settings of the bow. */
export interface BowSettings {
  readonly drawWeight: Newtons;
  readonly drawLength: Metres;
  /** The way of the nock from full draw to the string's rest. */
  readonly powerStroke: Metres;
}

/**
 * What peep, loop, silencers and a hand instead of a machine cost, as a share of speed. Common practice, no source: hunting
 * bows shoot 5 to 15 ft/s below what rating and settings promise.
 */
const FIELD_LOSS = 0.03;
/**
 * Standard uncertainty of the energy, relative: 4 % for the loss above, and 3 % because a bow let down or shortened does
 * not keep the shape of its draw curve.
 */
const ENERGY_SD = 0.05;

/**
 * Energy and virtual mass of a bow from its rating alone.
 *
 *   E = (m + K)(0.97 v)^2/2 · (W/W_r) · (s/s_r)
 *
 * W peak draw weight, s power stroke, r at the rating (longer or shorter by the difference of the draw lengths): the stored
 * energy is proportional to force times power stroke for one shape of the draw curve. To be used only where there is no
 * chronograph: the speed is uncertain by about 2.5 %.
 *
 * @throws DomainError when a power stroke or a weight is not above 0
 */
export function ratedBowEnergy(
  rating: BowRating,
  { drawWeight, drawLength, powerStroke }: BowSettings,
  prior: VirtualMassPrior = COMPOUND_VIRTUAL_MASS,
): BowEnergy {
  const ratedStroke = powerStroke + rating.drawLength - drawLength;
  const ratios = [drawWeight / rating.drawWeight, powerStroke / ratedStroke];
  if (!ratios.every((ratio) => ratio > 0 && Number.isFinite(ratio)))
    throw new DomainError(
      'draw weight or power stroke over that of the rating',
      Math.min(...ratios),
      'above 0',
    );
  const speed = rating.speed * (1 - FIELD_LOSS);
  const scale = ratios.reduce((product, ratio) => product * ratio, 1);
  const energy = ((rating.arrowMass + prior.value) * speed ** 2 * scale) / 2;
  // The rating fixes E/(m + K), so ln E moves with ln K by K/(m + K).
  const share = prior.value / (rating.arrowMass + prior.value);
  const variance = prior.logSd ** 2;
  return {
    energy: si(energy),
    virtualMass: prior.value,
    logCovariance: [
      [ENERGY_SD ** 2 + share ** 2 * variance, share * variance],
      [share * variance, variance],
    ],
    arrows: [],
    virtualMassFrom: 'prior',
  };
}
