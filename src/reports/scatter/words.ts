import type { Cause } from '../../advice/scatter/scatter-causes.ts';
import type { Vanes } from '../../arrow/parts/parts.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Session } from '../session.ts';
import type { ScatterFindings, VaneScatter } from './findings.ts';

export const vaneWords = ({ angle, turn }: Vanes): string =>
  turn === 'none' || angle === 0 ? 'straight vanes' : `${formatQuantity(angle, 'deg', 1)} ${turn} helical`;

/** Group sizes at the farthest range with either fletching, and why they differ. */
export function verdictWords(found: ScatterFindings, { smallLength, ...units }: DisplayUnits): string {
  const { own, other, asked } = found;
  const [size, otherSize] = [own, other].map(({ ranges }) => at(ranges, ranges.length - 1).group);
  if (size === undefined || otherSize === undefined) return '';
  const groupWords = (group: number, { vanes }: VaneScatter): string =>
    `${formatQuantity(group, smallLength, smallLength === 'in' ? 1 : 0)} with ${vaneWords(vanes)}`;
  const range = rangeWords(at(asked.ranges, asked.ranges.length - 1), units);
  const hardly = Math.max(size, otherSize) / Math.min(size, otherSize) < HARDLY;
  const why = hardly
    ? 'Hardly any difference: little on this arrow steers it, so there is little for the spin to average ' +
      'out. Blades in front change that: ask with broadheads as well.'
    : 'Anything crooked steers the arrow one way as long as it does not spin, and in a small circle when ' +
      'it does: the spin averages it out.';
  return (
    `At ${range} groups of ${asked.group}${own.bladed ? ' with broadheads' : ''} are ` +
    `${groupWords(size, own)}, and ${groupWords(otherSize, other)}. ${why}`
  );
}

/** A ratio of group sizes below this is called hardly a difference. */
const HARDLY = 1.05;

export const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  mass: 'mass',
  balance: 'balance',
  speed: 'speed',
  bend: 'bent shaft',
  vane: 'vane off',
  head: 'head leaning',
  nockTravel: 'nock travel',
};

/** What the arrows and shots vary in. */
export function variationWords(
  { units, assembly }: Session,
  { asked: { variation } }: ScatterFindings,
): string {
  const { mass, balance, speed, bend, vane, head, nockTravel } = variation;
  const small = units.smallLength === 'in' ? ([4, 2] as const) : ([3, 1] as const);
  const told = [
    `mass ${formatQuantity(mass, units.mass, 2)}`,
    `balance ${formatQuantity(balance, units.smallLength, small[1])}`,
    `speed ${formatQuantity(speed, units.speed, 2)}`,
    `sag of the shaft ${formatQuantity(bend, units.smallLength, small[0])}, one vane ${formatQuantity(vane, 'deg', 2)}`,
    `head ${formatQuantity(head, 'deg', 2)}`,
    `nock travel ${formatQuantity(nockTravel * assembly.arrow.flying.balance, units.speed, 3)}`,
  ];
  return `Standard deviations: ${told.join(', ')}.`;
}

export const shareWords = ({ vanes }: VaneScatter): string =>
  `With ${vaneWords(vanes)}, the share of each cause and of their interaction:`;

/** What a group is. */
export const groupWords = ({ asked: { group, arrows } }: ScatterFindings): string =>
  `Groups are the mean largest distance of ${group} hits, from ${arrows} arrows.`;

export const legendWords = (found: ScatterFindings): string =>
  [
    'shares: of the variance when each varies alone.',
    'interaction: the part that no single cause explains; negative where one cause cancels another, as when a vane ' +
      'that is off spins an arrow whose head leans.',
    groupWords(found),
  ].join('\n');
