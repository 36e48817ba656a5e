import type { LineSpread } from '../../advice/tuning/line-spread.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi } from '../../quantities/format.ts';
import { ofRest, onTarget } from './lengths.ts';

export type Line = 'vertical' | 'horizontal';

/** What was shot at one line. */
export interface LineFound {
  readonly line: Line;
  readonly found: LineSpread;
  readonly looks: number;
  /** Groups at different ranges were brought to the last one. */
  readonly scaled: boolean;
}

/** Of a hundred; of all where nothing is known. */
const hundred = (chance: number | null): string => (chance === null ? '100' : (100 * chance).toFixed(0));

/** Where to shoot next, in words. */
const nextWords = ({ shootNext }: LineSpread): string =>
  shootNext.length === 0
    ? ''
    : ` Shoot six ${shootNext.map((place) => `at ${ofRest(place)}`).join(' and six ')}.`;

/** What a line says of the rest. */
export function lineLine(found: LineSpread): string {
  const { verdict, now, chanceAlone, tightest, bestPosition, interval } = found;
  if (verdict === 'more positions') return `${fewWords(found)}${nextWords(found)}`;
  if (now !== null && now.growthAtMost < WORTH)
    return `Leave the rest: no place would make the group more than ${hundred(now.growthAtMost)} % smaller.`;
  if (verdict === 'not shown')
    return (
      `Nothing shown yet: chance alone gives as much in ${hundred(chanceAlone)} of 100 evenings. The tightest group ` +
      `(${ofRest(tightest)}) means nothing.${nextWords(found)}`
    );
  const place = bestPosition === null ? '' : ofRest(bestPosition);
  if (verdict !== 'best' || interval === null)
    return `The best place lies beyond what was shot, about ${place} or farther.${nextWords(found)}`;
  const [low, high] = interval;
  const larger = now === null ? '' : `; where it stands now the group is ${hundred(now.growth)} % larger`;
  return `Best at ${place} (between ${fromSi(low, 'mm').toFixed(1)} and ${ofRest(high)})${larger}.`;
}

/** Gains below this leave the rest alone. */
const WORTH = 0.05;

function fewWords({ groups, ratio, chanceAlone }: LineSpread): string {
  if (ratio === null) return `One place of the rest says nothing yet (${groups.length} shot).`;
  return (
    `Two places say little: the second group was ${ratio.value.toFixed(1)} times the first (${ratio.interval[0].toFixed(1)} to ` +
    `${ratio.interval[1].toFixed(1)}), and chance alone gives as much in ${hundred(chanceAlone)} of 100 evenings.`
  );
}

export function lineParagraphs({ found, looks, scaled }: LineFound, units: DisplayUnits): readonly string[] {
  const { now, doubling, chanceAlone, pooledSd } = found;
  const doubled =
    doubling === null ? '' : `, and doubles its variance ${ofRest(doubling)} off the best place`;
  return [
    `The arrows scatter ${onTarget(pooledSd, units)} all together${doubled}. Looks so far: ${looks}.`,
    ...(now === null || chanceAlone === null
      ? []
      : [
          `At most the group is ${hundred(now.growthAtMost)} % larger than it could be, where the rest stands now.`,
        ]),
    ...(chanceAlone !== null && chanceAlone <= 1e-4
      ? ['Chance alone gives as much in less than 1 of 10 000 evenings.']
      : []),
    ...(scaled ? ['Groups at another range count as if they had been shot at the last one.'] : []),
  ];
}
