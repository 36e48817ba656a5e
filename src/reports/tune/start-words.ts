import type { LaunchEstimate } from '../../advice/tuning/launch-from-paper.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';

/** The start as far as the shots decide it, sideways and in height. */
export function startWords(
  { start, sd, decided }: LaunchEstimate,
  balance: Metres,
  units: DisplayUnits,
): string {
  const angle = (value: number, error: number): string =>
    `${formatQuantity(Math.abs(value), 'deg', 1).replace('°', '').trim()} ± ${formatQuantity(error, 'deg', 1)}`;
  const rate = (value: number, error: number): string =>
    `${Math.abs(value).toFixed(1)} ± ${error.toFixed(1)} rad/s (nock ` +
    `${formatQuantity(Math.abs(value) * balance, units.speed, 2)})`;
  const directions = [
    { angleName: 'tailLeft', rateName: 'tailLeftRate', words: ['right', 'left'] },
    { angleName: 'tailUp', rateName: 'tailRisingRate', words: ['low', 'high'] },
  ] as const;
  const told = directions.flatMap(({ angleName, rateName, words: [back, ahead] }) => {
    const side = (value: number): string => (value < 0 ? back : ahead);
    const stands = Math.abs(start[angleName]) > sd[angleName];
    const goes = Math.abs(start[rateName]) > sd[rateName];
    return [
      ...(decided.includes(angleName) && stands
        ? [`stands ${angle(start[angleName], sd[angleName])} ${side(start[angleName])}`]
        : []),
      ...(decided.includes(rateName) && goes
        ? [`is going ${side(start[rateName])} at ${rate(start[rateName], sd[rateName])}`]
        : []),
    ];
  });
  return told.length === 0 ? '' : `the tail ${told.join(' and ')}`;
}

/** What no tear and no bare shaft can tell, said wherever they are read. */
export const CANNOT_TELL =
  'Not to be had from tears or bare shafts: the spine of the shaft; whether rest, yoke, cam lean, grip or contact is ' +
  'the cause; ' +
  'anything from a tear smaller than 0.15 in; anything at all when the vanes touch the rest.';
