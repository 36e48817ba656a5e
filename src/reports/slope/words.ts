import type { ThirdAxisMiss } from '../../advice/lean/third-axis.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { heightWords, sideWords } from '../side-words.ts';
import type { WorstCosine } from './findings.ts';

/** What to set where the cosine rule is worst, and what it says there. */
export function cosineWords({ mark, set }: WorstCosine, units: DisplayUnits): string {
  const place =
    `${rangeWords(mark.range, units)} and ${formatQuantity(Math.abs(mark.slope), 'deg', 0)} ` +
    `${mark.slope > 0 ? 'uphill' : 'downhill'}`;
  const inRange = (value: number): string => formatQuantity(value, units.range, 1);
  return (
    `At ${place} set ${inRange(set)}: the cosine rule says ${inRange(mark.cosineRange)} and hits ` +
    `${heightWords(mark.missByCosine, units)}, its worst in this table.`
  );
}

/** What a level not square to the shot costs where it costs most. */
export const thirdAxisWords = (thirdAxis: number, worst: ThirdAxisMiss, units: DisplayUnits): string =>
  `A level whose right end points ${formatQuantity(thirdAxis, 'deg', 1)} ahead (third axis) costs nothing on ` +
  `the flat, and ${sideWords(worst.lateral, units)} at ${rangeWords(worst.range, units)} and ` +
  `${formatQuantity(worst.slope, 'deg', 0)}: with its bubble centred the bow is canted ` +
  `${formatQuantity(worst.cant, 'deg', 2)}.`;
