import type { TorqueNull } from '../../advice/tuning/torque-null.ts';
import { HALF_SPREAD_OF_THREE } from '../../advice/tuning/torque-settings.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { atRange, onSight, onTarget } from './lengths.ts';

/** What to do with the sight. */
export function torqueLine(found: TorqueNull, gripToPeep: number, units: DisplayUnits): string {
  const { settings, now, arrowSd, move } = found;
  const last = at(settings, settings.length - 1);
  const range = atRange(last.range, units);
  const direction = (length: number): string => (length < 0 ? 'nearer the grip' : 'farther from the grip');
  switch (found.verdict) {
    case 'done':
      return (
        `Torque is inside the group: ${onTarget(Math.abs(last.shift) / 2, units)} either side of the middle at ${range}, ` +
        `where three ordinary shots spread ${onTarget(2 * HALF_SPREAD_OF_THREE * arrowSd * now.range, units)}.`
      );
    case 'first move':
      return (
        `Move the sight ${onTarget(Math.abs(move ?? last.shift), units)} ${direction(move ?? last.shift)} and shoot both ` +
        `ways again: hits went ${last.moves} the torque, ${onTarget(Math.abs(last.shift), units)} from left to right at ` +
        `${range}; one extension cannot tell how far.`
      );
    case 'not settled':
      return (
        'Not settled: these extensions do not differ by more than the arrows scatter. Shoot three a side ' +
        `${formatQuantity(0.0508, units.smallLength, 0)} ${last.moves === 'with' ? 'farther' : 'nearer'}.`
      );
    case 'contradiction':
      return (
        'These shots contradict one another: farther out the hits must go more against the torque. Look for left and right ' +
        'mixed up, or an extension misread.'
      );
    case 'move':
      return moveLine(found, gripToPeep, units);
  }
}

/** The bar of a sight ends between these; beyond them the null cannot be set. */
const SIGHT_ENDS = { least: 0, most: 14 * 0.0254 } as const;

function moveLine(
  { null: place, move, now, torque }: TorqueNull,
  gripToPeep: number,
  units: DisplayUnits,
): string {
  if (place === null || move === null || torque === null || place.interval === null) return '';
  const { extension, sd, interval } = place;
  const beyond = extension < SIGHT_ENDS.least || extension > SIGHT_ENDS.most;
  const between = `19 times in 20 between ${interval.map((end) => onSight(end, units).replace(/ \S+$/, '')).join(' and ')}`;
  const unit = onSight(extension, units).replace(/^\S+ /, '');
  const set =
    `Set the sight ${onSight(extension, units)} ahead of the grip (± ${onSight(sd, units)}, ${between} ${unit}): ` +
    `${onSight(Math.abs(move), units)} ${move < 0 ? 'nearer' : 'farther'} than now.`;
  if (!beyond) return set;
  const end = extension < SIGHT_ENDS.least ? SIGHT_ENDS.least : SIGHT_ENDS.most;
  const u = 1 / (gripToPeep + end) - 1 / (gripToPeep + extension);
  const left = Math.abs(torque * gripToPeep * u * now.range);
  return `${set} That is beyond any bar: set it to its end; about ${onTarget(left, units)} from left to right is left over.`;
}

/** The torque behind the shots, and what is left of it in an ordinary group. */
export function torqueParagraphs(
  { verdict, torque, now, offLine, null: place }: TorqueNull,
  units: DisplayUnits,
): readonly string[] {
  const growth = `${(100 * now.groupGrowth).toFixed(1)} %`;
  return [
    ...(torque === null || place === null
      ? []
      : [
          place.method === 'one extension'
            ? 'How far is worked out for a turn of 6.3° from left to right, as is usual, and may be 1.6 times as ' +
              'much or as little.'
            : `The shots were turned by ${formatQuantity(torque, 'deg', 1)} from left to right.`,
        ]),
    ...(verdict === 'done' && place !== null && place.interval !== null
      ? [
          `All shots together put the null ${onSight(place.extension, units)} ahead of the grip (± ${onSight(place.sd, units)}).`,
        ]
      : []),
    `Where the sight stands now, an ordinary group is ${growth} larger by ordinary torque at ` +
      `${atRange(now.range, units)}: nobody needs to chase the last tenth of an inch.`,
    ...(offLine
      ? ['The extensions do not lie on one line: look for an extension misread, or left and right mixed up.']
      : []),
  ];
}
