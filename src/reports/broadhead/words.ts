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
    `The centre of pressure is ${margin(field)} behind the balance point with a field point and ${margin(broadhead)} with ` +
    `the broadhead: ${head}.`
  );
}

/** Of a broadhead whose margin is too small to trust. */
export const smallMarginWords = (): string =>
  `below ${100 * LEAST_MARGIN} %, anything crooked on the arrow steers it. Use smaller blades, larger ` +
  'vanes, or more weight up front.';

export const launchWords = ({ angle, nockSpeed }: BroadheadFindings, units: DisplayUnits): string =>
  `clean: the shaft points along its path at launch. tail left, tail high: ${formatQuantity(angle, 'deg', 1)} off it. ` +
  `nock travel left: the nock moves sideways at ${formatQuantity(nockSpeed, units.speed, 1)}.`;

/** Why a clean broadhead of more drag lands high. */
export const HIGH_WORDS =
  'The broadhead hits high from a clean launch although it has more drag: an arrow leaves the string not yet ' +
  'turning with its falling path, so it flies nose-high through its first swing, and blades in front lift it ' +
  'until it has turned. That adds a small upward angle in the first yards; a slightly higher nocking point ' +
  'cancels it, and hides it on most bows.';

export const SHOOTING_WORDS =
  'A leaning broadhead or a crooked shaft adds to this: see quillpath scatter. Sight broadheads in separately, ' +
  'and shoot them only into a target rated for broadheads.';
