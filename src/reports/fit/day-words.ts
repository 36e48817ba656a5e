import type { BowCause } from '../../calibration/bow-change.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { LeftOut } from '../../setup/assemble/shots.ts';
import type { FitFindings } from './findings.ts';

/** What the days were off by, or what evenings that nobody told apart could hide; empty when there is neither. */
export function dayLines(found: FitFindings, units: DisplayUnits): readonly string[] {
  const { days, hidden } = found;
  const speed = (value: number): string => formatQuantity(value, units.speed, 1);
  const named = days.map(({ day, measurements, speedOffset, sd, build }) => {
    const count = measurements === 1 ? '1 measurement' : `${measurements} measurements`;
    const side = speedOffset < 0 ? 'slower' : 'faster';
    const shot = build === null ? count : `${count}, ${build}`;
    return [
      `On ${day} (${shot}) the arrows flew as if ${speed(Math.abs(speedOffset))} ${side} than on the mean of days`,
      `(± ${speed(sd)}); that includes air and wind as well as the bow.`,
    ].join(' ');
  });
  const told = [...named, ...agreementLines(found)];
  if (hidden === null) return told;
  const far = formatQuantity(hidden.range, units.range, 0);
  const shift = `${formatQuantity(hidden.shift, units.smallLength, 1)} at ${far}`;
  return [
    ...told,
    [
      'Marks without a date are assumed to be from one day on each side of the widest gap between their ranges.',
      `Two evenings that differ by ${speed(hidden.apart)} could hide up to ${shift};`,
      'a "date" in each mark would separate them.',
    ].join(' '),
  ];
}

/** Below this chance days are said to disagree. */
const DISAGREE = 0.05;

function agreementLines({ daysAgree }: FitFindings): readonly string[] {
  if (daysAgree === null) return [];
  const chance =
    daysAgree < 0.001 ? 'under 0.1 %' : `${(100 * daysAgree).toFixed(daysAgree < 0.1 ? 1 : 0)} %`;
  return daysAgree < DISAGREE
    ? [`The days do not agree: evenings of one bow would differ so much with a chance of ${chance} only.`]
    : [`The days agree as evenings of one bow do (chance of a greater difference ${chance}).`];
}

/** What has changed on the bow, since when, and how sure that is; none for most. */
export function changeLines({ change }: FitFindings, units: DisplayUnits): readonly string[] {
  if (change === null) return [];
  const { since, cause, size, sd, chance, chanceOfAny } = change;
  const percent = (value: number): string => (value > 0.99 ? 'over 99 %' : `${(100 * value).toFixed(0)} %`);
  return [
    [
      `The bow has changed by ${since} (chance ${percent(chanceOfAny)}). What explains it best`,
      `(${percent(chance)}): ${CAUSES[cause](size, sd, units)}.`,
      'Measure that again; until then no tape fits all days.',
    ].join(' '),
  ];
}

type Told = (size: number, sd: number, units: DisplayUnits) => string;
const CAUSES: Readonly<Record<BowCause, Told>> = {
  launch_speed: (size, sd, { speed }) =>
    `the bow shoots ${formatQuantity(Math.abs(size), speed, 1)} ${size < 0 ? 'slower' : 'faster'} ` +
    `(± ${formatQuantity(sd, speed, 1)}), as with a string that has ${size < 0 ? 'stretched' : 'shrunk'}`,
  peep_or_sight: (size, sd) =>
    `the peep has slipped ${size < 0 ? 'down' : 'up'}, or the pin gone ${size < 0 ? 'up' : 'down'}, by ` +
    `${formatQuantity(Math.abs(size), 'mm', 1)} (± ${formatQuantity(sd, 'mm', 1)})`,
  drag: (size, sd) =>
    `the arrows have ${(100 * Math.abs(size)).toFixed(0)} % ${size < 0 ? 'less' : 'more'} drag ` +
    `(± ${(100 * sd).toFixed(0)} %), as with other vanes or points`,
};

/** The arrows that were left out of their groups, a line each. */
export const wildLines = ({ wild }: FitFindings, units: DisplayUnits): readonly string[] =>
  wild.map((arrow) => {
    const range = formatQuantity(arrow.range, units.range, 0);
    const day = arrow.date === null ? '' : ` of ${arrow.date}`;
    return (
      `Arrow ${arrow.arrow} of the ${range} group${day}, ${placeWords(arrow, units)}, does not belong with the others ` +
      `(${oneIn(arrow.chance)}) and is left out of the middle of its group.`
    );
  });

function placeWords({ hit: { right, high } }: LeftOut, { smallLength }: DisplayUnits): string {
  const shown = (value: number): string =>
    formatQuantity(Math.abs(value), smallLength, smallLength === 'in' ? 1 : 0);
  return `${shown(right)} ${right < 0 ? 'left' : 'right'} and ${shown(high)} ${high < 0 ? 'low' : 'high'}`;
}

const oneIn = (chance: number): string =>
  chance < 1e-4 ? 'a chance under 1 in 10 000' : `a chance of 1 in ${(1 / chance).toFixed(0)}`;
