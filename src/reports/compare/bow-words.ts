import type { UncertainReadings } from '../../advice/builds/uncertain-readings.ts';
import { drawCurveFullness } from '../../bow/draw-curve.ts';
import { type BowEnergy, efficiency, launchSpeed, speedPerMass } from '../../bow/energy.ts';
import { at } from '../../numerics/at.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { si } from '../../quantities/quantity.ts';
import { ratedEnergy } from '../../setup/assemble/assemble-launch.ts';
import type { Session } from '../session.ts';

/** What the bow gives, how it is known, and what one more grain costs. */
export function bowLines({ setup, units }: Session, { build }: UncertainReadings): string {
  const { energy } = build;
  const { mass } = build.rig.conditions.arrow;
  const share = efficiency(energy, mass);
  const slope = speedPerMass(energy, mass);
  const grain = units.mass === 'gr' ? fromSi(1, 'gr') : fromSi(1, 'g');
  const perMass = (value: number) =>
    Math.abs(fromSi(value, units.speed) / grain).toFixed(units.mass === 'gr' ? 3 : 2);
  const percent = (value: number) => (100 * value).toFixed(0);
  return [
    `Bow: ${formatQuantity(energy.energy, units.energy, 0)} shared by arrow and virtual mass ` +
      `(${virtualMassWords(energy, units.mass)}); this arrow takes ${percent(share.value)} ± ` +
      `${percent(share.sd)} % of it.`,
    `One ${units.mass === 'gr' ? 'grain' : 'gram'} more costs ${perMass(slope.value)} ± ` +
      `${perMass(slope.sd)} ${symbolOf(units.speed)}. Speeds of builds that were not chronographed come ` +
      'from v = √(2E/(m + K)).',
    energy.virtualMassFrom === 'prior' && energy.arrows.length > 1
      ? 'K is still mostly assumed: a more different arrow mass, or the mean of more shots, would measure it.'
      : '',
    energy.virtualMassFrom === 'prior' && energy.arrows.length === 1
      ? `K is mostly assumed: chronograph a second arrow ${units.mass === 'gr' ? '100 gr' : '6 g'} lighter ` +
        'or heavier, and list it under bow.chronographed.'
      : '',
    ratingLine(setup, units, mass),
    fullnessLine(setup, build),
  ]
    .filter((line) => line !== '')
    .join('\n');
}

function virtualMassWords({ virtualMass, logCovariance }: BowEnergy, unit: Session['units']['mass']): string {
  const spread = Math.exp(Math.sqrt(at(at(logCovariance, 1), 1)));
  const [low, high] = [virtualMass / spread, virtualMass * spread].map((mass) =>
    formatQuantity(mass, unit, unit === 'gr' ? 0 : 1),
  );
  return `K ${formatQuantity(virtualMass, unit, unit === 'gr' ? 0 : 1)}, ${low} to ${high} (one standard error either way)`;
}

function ratingLine({ bow, launch }: Session['setup'], units: Session['units'], mass: number): string {
  const rated = ratedEnergy(bow);
  if (rated === null) return '';
  const { value, sd } = launchSpeed(rated, si(mass));
  const promised = `${formatQuantity(value, units.speed, 0)} ± ${formatQuantity(sd, units.speed, 0)}`;
  return launch.speed === 'rated'
    ? 'The speed comes from the rating (5 gr/lb, 30 in and 70 lb unless the file says otherwise), less 3 % ' +
        `for the peep, the loop and a hand instead of a machine: ${promised}.`
    : `The rating promises ${promised} for this arrow at your weight and draw.`;
}

/** No draw curve stores more than peak force times way. */
function fullnessLine(
  { bow }: Session['setup'],
  { energy, powerStroke }: UncertainReadings['build'],
): string {
  const force = bow.peak_draw_weight;
  if (force === undefined) return '';
  const fullness = drawCurveFullness(energy.energy, force, powerStroke);
  if (fullness <= 1)
    return (
      `That is ${(100 * fullness).toFixed(0)} % of peak draw weight times power stroke; recurves store 58 ` +
      '%, compounds more.'
    );
  return (
    `That is ${(100 * fullness).toFixed(0)} % of peak draw weight times power stroke, more than any bow ` +
    'can store: check the draw weight, the draw length and the chronograph.'
  );
}
