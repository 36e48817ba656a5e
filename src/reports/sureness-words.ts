import type { MarkUncertainty } from '../calibration/mark-uncertainty.ts';
import type { DisplayUnits } from '../quantities/display-units.ts';
import { formatQuantity, fromSi, toSi } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import { listed } from './listed.ts';
import { roughDigits } from './side-words.ts';
import { areTied, isToldSpread } from './told-spread.ts';

/** How sure the mark of one range is. */
type Sure = Pick<MarkUncertainty, 'range' | 'onTargetSd'>;

/**
 * Marks are trusted as far as nineteen arrows in twenty would be within 2 in of where they are expected: one in as a standard
 * error.
 */
const TRUSTED_SD = 0.0254; // m

/** Ranges are told in whole fives of the unit shown. */
const FIVE = 5;

/**
 * How good marks are: "Good to ± 0.2 in at 20 yd, 0.6 in at 60 yd and 2.2 in at 100 yd."; of marks that rest on no shot, how far
 * they may be trusted as well. Empty without marks.
 *
 * @param sure by rising range
 */
export function surenessWords(
  sure: readonly Sure[],
  units: DisplayUnits,
  { calibrated, from }: { readonly calibrated: boolean; readonly from: Metres },
): string {
  const round = roundest(sure, units);
  const lost = round.find(({ onTargetSd }) => !isToldSpread(onTargetSd));
  const known = lost === undefined ? round : round.slice(0, round.indexOf(lost));
  const served = round.filter(({ range }) => range >= from - ROUNDING_LEFT);
  if (round.length === 0) return '';
  if (known.length === 0 || !areTied(served.map(({ onTargetSd }) => onTargetSd))) return NOT_TIED;
  const told = toldOf(known, from);
  const good = `good to ± ${listed(
    told.map(
      ({ range, onTargetSd }) =>
        `${formatQuantity(onTargetSd, units.smallLength, roughDigits(units))} at ${formatQuantity(range, units.range, 0)}`,
    ),
  )}`;
  return calibrated
    ? `G${good.slice(1)}.${lostWords(lost, units)}`
    : `No marks shot: ${good}. ${trustWords(sure, units)}`.trimEnd();
}

/** From which range on marks are not known; empty where they all are. */
export const lostWords = (first: Pick<Sure, 'range'> | undefined, units: DisplayUnits): string =>
  first === undefined
    ? ''
    : ` From ${formatQuantity(first.range, units.range, 0)} on, a mark may be anything.`;

const NOT_TIED = 'No mark ties the numbers of the scale to the arrow yet, so a reading may be anything.';

/** The zero range or the first beyond it, the roundest about half-way, and the last. */
function toldOf(sure: readonly Sure[], from: Metres): readonly Sure[] {
  const served = sure.filter(({ range }) => range >= from - ROUNDING_LEFT);
  const [first, last] = [served[0] ?? sure[0], sure.at(-1)];
  if (first === undefined || last === undefined) return [];
  const halfWay = (first.range + last.range) / 2;
  const middle = served.toSorted(
    (a, b) => Math.abs(a.range - halfWay) - Math.abs(b.range - halfWay) || a.range - b.range,
  )[0];
  return [...new Set([first, ...(middle === undefined ? [] : [middle]), last])];
}
const ROUNDING_LEFT = 1e-6; // m

/** Those at whole fives of the unit shown, where there are enough. */
export function roundest<At extends Pick<Sure, 'range'>>(
  sure: readonly At[],
  units: DisplayUnits,
): readonly At[] {
  const round = sure.filter(({ range }) => {
    const fives = fromSi(range, units.range) / FIVE;
    return Math.abs(fives - Math.round(fives)) < ROUNDING_LEFT;
  });
  return round.length < LEAST_TOLD ? sure : round;
}
const LEAST_TOLD = 3;

/** Where marks that rest on the ruler and the chronograph alone stop being of use; empty when they never do. */
function trustWords(sure: readonly Sure[], units: DisplayUnits): string {
  const poor = sure.find(({ onTargetSd }) => onTargetSd > TRUSTED_SD);
  if (poor === undefined) return '';
  const step = toSi(FIVE, units.range);
  const count = Math.ceil(fromSi(poor.range, units.range) / FIVE - 1e-9) - 1;
  return count < 1
    ? 'Do not trust them until you have shot a mark.'
    : `Do not trust them beyond about ${formatQuantity(count * step, units.range, 0)} before you have shot marks.`;
}
