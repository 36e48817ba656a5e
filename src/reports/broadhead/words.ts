import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { bowLengthWords } from '../bow-length.ts';
import { listed, thirdsOf } from '../listed.ts';
import { heightWords, roughDigits } from '../side-words.ts';
import type { BroadheadFindings, Headed } from './findings.ts';

/** Where a clean broadhead hits, with its error, and what that rests on. */
export function verdictWords({ starts }: BroadheadFindings, units: DisplayUnits): string {
  const told = thirdsOf(at(starts, 0).misses).map(
    ({ range, high, highSd }) =>
      `${heightWords(high, units, roughDigits(units))} (± ${formatQuantity(highSd, units.smallLength, roughDigits(units))}) ` +
      `at ${rangeWords(range, units)}`,
  );
  return `From a clean launch the broadhead hits ${listed(told)}: worked out, not measured on arrows.`;
}

/** What the blades do to the margin. */
export function marginWords({ field, broadhead, blades }: BroadheadFindings, units: DisplayUnits): string {
  const margin = ({ staticMargin, marginSd, marginShare }: Headed) =>
    `${numberWords(staticMargin, units)} ± ${bowLengthWords(marginSd, units, 1)} ` +
    `(${(100 * marginShare).toFixed(0)} % of the length)`;
  const head =
    `${blades.count} blades, ${bowLengthWords(blades.length, units, 2)} long, ` +
    `${bowLengthWords(blades.cuttingDiameter, units, 2)} across`;
  return (
    `The centre of pressure is ${margin(field)} behind the balance point with a field point and ${margin(broadhead)} with ` +
    `the broadhead: ${head}.`
  );
}

const numberWords = (margin: number, { bowLength }: DisplayUnits): string =>
  bowLengthWords(margin, { bowLength }, 1).replace(/ .*$/, '');

/** Where a clean broadhead hits at the farthest range, with its error. */
export function cleanWords({ starts }: BroadheadFindings, units: DisplayUnits): string {
  const { misses } = at(starts, 0);
  const { range, high, highSd } = at(misses, misses.length - 1);
  const size = formatQuantity(Math.abs(high), units.smallLength, units.smallLength === 'in' ? 1 : 0);
  return (
    `Out of a clean launch it hits ${size} ${high < 0 ? 'low' : 'high'} at ${rangeWords(range, units)}, ` +
    `± ${formatQuantity(highSd, units.smallLength, units.smallLength === 'in' ? 1 : 0)}.`
  );
}

/** What the errors hold. */
export const ERROR_WORDS =
  'The error (one standard error; by range in the JSON) holds the laws of lift, the wake of the blades on the vanes, ' +
  '40 % of what the shape of each head costs in drag, and a nock that travels up or left at 0.25 ft/s in a tuned bow.';

/** Where two blades hit at the farthest range by how they stand at the launch, as a span. */
export function standsWords({ starts }: BroadheadFindings, units: DisplayUnits): string {
  const lines = starts.map(({ name, misses }) => {
    const { stands } = at(misses, misses.length - 1);
    const span = (of: readonly number[]): string => {
      const [low, high] = [Math.min(...of), Math.max(...of)].map((value) =>
        formatQuantity(value, units.smallLength, units.smallLength === 'in' ? 1 : 0),
      );
      return `${low} to ${high}`;
    };
    return `  ${name}: right ${span(stands.map(({ right }) => right))}, high ${span(stands.map(({ high }) => high))}`;
  });
  const last = at(at(starts, 0).misses, at(starts, 0).misses.length - 1);
  return [
    `Two blades push from where they stand; at ${rangeWords(last.range, units)}, standing upright, flat ` +
      'or between as the arrow leaves:',
    ...lines,
  ].join('\n');
}

/** Of a broadhead whose margin is too small to trust, or that has none. */
export const smallMarginWords = ({ broadhead }: BroadheadFindings): string =>
  broadhead.staticMargin > 0 ? BELOW_LEAST : `${BELOW_LEAST} ${NO_MARGIN}`;

const NO_MARGIN =
  'With this head the centre of pressure is ahead of the balance point: the arrow turns away from its path until ' +
  'the wake of the blades has passed the vanes, and goes where that takes it. Do not trust these numbers, and do ' +
  'not shoot it at any distance.';

const BELOW_LEAST =
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

export const SHOOTING_SHORT =
  'Shoot broadheads only into a target rated for them, and sight them in separately.';

export const SHOOTING_WORDS =
  'A leaning broadhead or a crooked shaft adds to this: see quillpath scatter. Sight broadheads in separately, ' +
  'and shoot them only into a target rated for broadheads.';
