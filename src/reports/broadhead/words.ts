import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { BroadheadFindings, Headed } from './findings.ts';

/** What the blades do to the margin. */
export function marginWords({ field, broadhead, blades }: BroadheadFindings, units: DisplayUnits): string {
  const margin = ({ staticMargin, marginShare }: Headed) =>
    `${formatQuantity(staticMargin, units.bowLength, 1)} (${(100 * marginShare).toFixed(0)} % of the length)`;
  const head =
    `${blades.count} blades, ${formatQuantity(blades.length, units.bowLength, 2)} long, ` +
    `${formatQuantity(blades.cuttingDiameter, units.bowLength, 2)} across`;
  return (
    `The air takes hold ${margin(field)} behind the balance point with a field point, ${margin(broadhead)} with ` +
    `the broadhead: ${head}.`
  );
}

/** Of a broadhead whose margin is too small to trust. */
export const smallMarginWords = (): string =>
  `below ${100 * LEAST_MARGIN} % whatever is crooked on the arrow steers it. Take smaller blades, larger ` +
  'vanes, or more weight in front.';

export const launchWords = ({ angle, nockSpeed }: BroadheadFindings, units: DisplayUnits): string =>
  `clean: the shaft leaves along its flight. tail left, tail high: ${formatQuantity(angle, 'deg', 1)} off it. ` +
  `nock travel left: the nock moves across at ${formatQuantity(nockSpeed, units.speed, 1)}.`;

/** Why a clean broadhead of more drag lands high. */
export const HIGH_WORDS =
  'High out of a clean start, though it has more drag: an arrow leaves the string not yet turning with its ' +
  'falling path, so it rides nose-high through its first swing, and blades in front lift it until it has ' +
  'turned. That sets a small upward angle in the first yards; a nock set a little higher undoes it, and hides ' +
  'it in most bows.';

export const SHOOTING_WORDS =
  'A broadhead that leans or a crooked shaft adds to this: see the command scatter. Sight broadheads in on ' +
  'their own, and shoot them only at a stop made for them.';
