import type { Arrow } from '../../arrow/arrow.ts';
import type { Air } from '../../atmosphere/air.ts';
import {
  type BowEnergy,
  type ChronographedArrow,
  COMPOUND_VIRTUAL_MASS,
  launchSpeed,
  type VirtualMassPrior,
} from '../../bow/energy.ts';
import { powerStroke } from '../../bow/power-stroke.ts';
import { ratedBowEnergy, USUAL_RATING } from '../../bow/rating.ts';
import { speedBefore } from '../../flight/speed-before.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import type { Estimate } from '../../quantities/estimate.ts';
import { FOOT } from '../../quantities/exact.ts';
import { type Metres, type MetresPerSecond, si } from '../../quantities/quantity.ts';
import type { BowSection, SetupFile } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';
import { statedSd } from './stated-sd.ts';

const draw = (bow: BowSection): Metres => bow.draw_length ?? defaultOf('bow.draw_length');
const brace = (bow: BowSection): Metres => bow.brace_height ?? defaultOf('bow.brace_height');

/** The way of the nock from full draw to the string's rest. */
export const powerStrokeOf = (bow: BowSection): Metres => powerStroke(draw(bow), brace(bow));

/**
 * Of a compound bow of which nothing is known.
 * @source common practice, no source: two in three hunting setups shoot between 210 and 310 fps
 */
const UNMEASURED_SPEED: Estimate<MetresPerSecond> = { value: si(260 * FOOT), sd: si(50 * FOOT) };

/**
 * Speed at the start of free flight. A chronograph's reading is carried back by drag, v₀ = v exp(k s), over the way s from
 * there to the chronograph; at the string's rest the balance point is (balance − brace height) ahead of the grip. `rated`
 * asks the bow's rating, and so does `unknown` where there is one.
 */
export function assembleLaunch(
  { launch, bow }: Pick<SetupFile, 'launch' | 'bow'>,
  { flying }: Arrow,
  air: Air,
): Estimate<MetresPerSecond> {
  const { speed, measured_at: measuredAt } = launch;
  const sd = statedSd.launchSpeed(launch);
  const known = speed === 'unknown' ? ratedEnergy(bow) : null;
  if (speed === 'unknown' && known === null) return UNMEASURED_SPEED;
  if (speed === 'rated' || speed === 'unknown') {
    const rated = known ?? ratedEnergy(bow);
    if (rated === null)
      throw new DomainError(
        'rated speed of the bow (m/s)',
        Number.NaN,
        'bow.rating.speed, for "speed: rated"',
      );
    const found = launchSpeed(rated, flying.mass);
    return { value: found.value, sd: sd ?? found.sd };
  }
  const chronograph = sd ?? defaultOf('launch.speed_sd');
  if (measuredAt === undefined) return { value: speed, sd: chronograph };
  const way = wayToChronograph(bow, flying.balance, measuredAt);
  return { value: speedBefore(flying, air, speed, way), sd: chronograph };
}

/** How far an arrow flies freely to a chronograph so far ahead of the grip; none to one that stands nearer. */
export const wayToChronograph = (bow: BowSection, balance: Metres, measuredAt: Metres): Metres =>
  si(Math.max(0, measuredAt + brace(bow) - balance));

const settings = (bow: BowSection) => ({
  drawWeight: bow.peak_draw_weight ?? bow.rating?.draw_weight ?? USUAL_RATING.drawWeight,
  drawLength: draw(bow),
  powerStroke: powerStrokeOf(bow),
});

/** What the maker's rating promises of this bow as it is set; null when the file does not name it. */
export function ratedEnergy(bow: BowSection): BowEnergy | null {
  const { rating } = bow;
  if (rating === undefined) return null;
  return ratedBowEnergy(
    {
      speed: rating.speed,
      drawWeight: rating.draw_weight ?? USUAL_RATING.drawWeight,
      drawLength: rating.draw_length ?? USUAL_RATING.drawLength,
      arrowMass: rating.arrow_mass ?? USUAL_RATING.arrowMass,
    },
    settings(bow),
    virtualMassPrior(bow),
  );
}

/** What the file says of the bow's virtual mass, or what is usual. */
export function virtualMassPrior(bow: BowSection): VirtualMassPrior {
  const { virtual_mass: value } = bow;
  const sd = statedSd.virtualMass(bow);
  if (value === undefined) return COMPOUND_VIRTUAL_MASS;
  return { value, logSd: sd === undefined ? COMPOUND_VIRTUAL_MASS.logSd : sd / value };
}

/** Other arrows that were chronographed with this bow. */
export const otherShots = ({ chronographed = [] }: BowSection): readonly ChronographedArrow[] =>
  chronographed.map((shot, i) => ({
    name: `chronographed ${i + 1}`,
    mass: shot.arrow_mass,
    speed: shot.speed,
    speedSd: statedSd.chronographed(shot) ?? defaultOf('launch.speed_sd'),
  }));
