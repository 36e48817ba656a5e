import type { AirChange, OtherAir } from '../../advice/range/air-change.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { listed, thirdsOf } from '../listed.ts';
import type { Session } from '../session.ts';
import { heightWords, roughDigits } from '../side-words.ts';
import type { WindFindings } from './findings.ts';

/** Hour of the clock a wind comes from. */
export const hourOf = (i: number): string => `${i === 0 ? 12 : i} o'clock`;

export const airWords = (other: OtherAir, units: DisplayUnits): string =>
  other.kind === 'altitude'
    ? `camp at ${formatQuantity(other.altitude, units.height, 0)}`
    : `here at ${formatQuantity(other.air.temperature, units.temperature, 0)}`;

/** What the wind does from square to the side. */
export function verdictWords({ speed, effects }: WindFindings, units: DisplayUnits): string {
  const drifts = thirdsOf(at(effects, FROM_THE_SIDE).rows).map(
    ({ lateral, range }) =>
      `${formatQuantity(Math.abs(lateral), units.smallLength, roughDigits(units))} at ${rangeWords(range, units)}`,
  );
  return `${windWords(speed, units)} from the side: ${listed(drifts)}.`;
}
/** Three o'clock, where winds are listed from twelve on. */
const FROM_THE_SIDE = 3;

/** "10 mph", "4.5 m/s" */
export const windWords = (speed: number, { windSpeed }: DisplayUnits): string =>
  formatQuantity(speed, windSpeed, 1).replace('.0 ', ' ');

/** Whether the tape serves in other air as well, and the worst case of those looked at. */
export function airVerdict({ airs }: WindFindings, units: DisplayUnits): string {
  const size = ({ worst }: AirChange): number => Math.abs(worst.vertical);
  const worst = airs.toSorted((a, b) => size(b) - size(a))[0];
  if (worst === undefined) return '';
  const where = `${worst.other.kind === 'altitude' ? 'in a ' : ''}${airWords(worst.other, units)}`;
  const miss = `${heightWords(worst.worst.vertical, units)} at ${rangeWords(worst.worst.range, units)}`;
  return airs.every(({ holds }) => holds)
    ? `The tape stays accurate in all the conditions below: at worst, ${where} it hits ${miss}, less than ` +
        'a third of what one arrow scatters.'
    : `The tape does not stay accurate everywhere: at worst, ${where} it hits ${miss}. Make one for each camp.`;
}

/** What to type for a tape of the other air that is farthest from holding; none where all hold. */
export function tapeWords(
  { name, build }: Pick<Session, 'name' | 'build'>,
  { airs }: WindFindings,
  units: DisplayUnits,
): readonly string[] {
  const size = ({ worst }: AirChange): number => Math.abs(worst.vertical);
  const [worst] = airs.filter(({ holds }) => !holds).toSorted((a, b) => size(b) - size(a));
  if (worst === undefined) return [];
  const { other } = worst;
  const there =
    other.kind === 'altitude'
      ? `--altitude "${formatQuantity(other.altitude, units.height, 0)}"`
      : `--temperature "${formatQuantity(other.air.temperature, units.temperature, 0)}"`;
  const arrow = build === null ? '' : ` --build "${build.name}"`;
  const file = /^[\w./-]+$/.test(name) ? name : `"${name}"`;
  return [
    `A tape for ${other.kind === 'altitude' ? 'a ' : ''}${airWords(other, units)}, from the marks shot here:\n` +
      `  quillpath tape ${file}${arrow} ${there} --out ${other.kind === 'altitude' ? 'camp' : 'other-air'}.pdf`,
  ];
}
