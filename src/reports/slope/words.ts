import type { ThirdAxisMiss } from '../../advice/lean/third-axis.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { listed } from '../listed.ts';
import { heightWords, sideWords } from '../side-words.ts';
import type { SlopeFindings, WorstCosine } from './findings.ts';

/** What to set for a common shot uphill and downhill. */
export function verdictWords({ rows }: SlopeFindings, units: DisplayUnits): string {
  const marks = rows.map(({ mark }) => mark);
  const steepness = commonest(
    marks.map(({ slope }) => Math.abs(slope)),
    USUAL_SLOPE,
  );
  const range = commonest(
    marks.map((mark) => mark.range),
    USUAL_RANGE,
  );
  const shots = marks.filter(
    (mark) => mark.range === range && Math.abs(Math.abs(mark.slope) - steepness) < SAME_ANGLE,
  );
  const told = shots
    .toSorted((a, b) => b.slope - a.slope)
    .map(({ slope, markRange }) => {
      const way = slope > 0 ? 'uphill' : 'downhill';
      return markRange === null
        ? `the highest mark ${way}`
        : `${formatQuantity(markRange, units.range, 1)} ${way}`;
    });
  return `At ${rangeWords(range, units)} on a slope of ${formatQuantity(steepness, 'deg', 0)} set ${listed(told)}.`;
}
/** A shot that is often asked for. @source common practice, no source */
const USUAL_SLOPE = 0.35; // rad, 20 degrees
const USUAL_RANGE = 36.6; // m, 40 yd
const SAME_ANGLE = 1e-9; // rad

/** The one of many nearest to a usual value. */
const commonest = (values: readonly number[], usual: number): number =>
  at(
    values.toSorted((a, b) => Math.abs(a - usual) - Math.abs(b - usual)),
    0,
  );

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
