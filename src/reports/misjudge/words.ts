import type { Spread } from '../../advice/range/hit-chance.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, toSi } from '../../quantities/format.ts';
import { bowLengthWords } from '../bow-length.ts';
import type { MisjudgeFindings } from './findings.ts';

/** What a guess may be off at the farthest range, and how many hit there. */
export function verdictWords(
  { ring, spread, farthest: { room, hit } }: MisjudgeFindings,
  units: DisplayUnits,
): string {
  const inRange = (value: number): string => formatQuantity(value, units.range, 1);
  const short = room.short === null ? 'any amount short' : `${inRange(room.short)} short`;
  return (
    `At ${rangeWords(room.range, units)} a guess may be ${short} or ${inRange(room.long)} long for a ring of ` +
    `${formatQuantity(ring, units.smallLength, 1)}; with all errors together ${percent(hit.chance)} of shots hit` +
    (spread.guess === 0 ? '.' : `, and with the range known ${percent(hit.without.guess)}.`)
  );
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

/** What the columns mean, and what the chances were computed from; a line each. @param whose arrows scatter so */
export function columnWords(spread: Spread, whose: string, units: DisplayUnits): string {
  const hundred = toSi(100, units.range);
  return [
    'short, long: a guess off by this much puts the arrow on the edge of the ring; ' +
      '"-": no short guess does, because the highest mark still hits.',
    `hits: of shots at the centre, guesses off by ${formatQuantity(spread.guess, '%', 0)} of the range, ` +
      `cants of ${formatQuantity(spread.cant, 'deg', 1)}, ` +
      `winds of ${formatQuantity(spread.windAcross, units.windSpeed, 1)} and ` +
      `${bowLengthWords(spread.arrow * hundred, units, 1)} at ` +
      `${formatQuantity(hundred, units.range, 0)} of ${whose} (standard deviations).`,
  ].join('\n');
}
