import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { heightWords, roughDigits } from '../side-words.ts';
import type { PinFound, PinsFindings } from './findings.ts';

/** How a pin is called: by what it is set for, else by its number. */
export const pinName = (
  { pin, setFor }: Pick<PinFound, 'pin' | 'setFor'>,
  { range }: DisplayUnits,
): string => (setFor === null ? `pin ${pin}` : `${formatQuantity(setFor, range, 0)} pin`);

/** The gaps, and the stretches over which each pin can be held dead on. */
export function verdictWords({ pins, ring, between }: PinsFindings, units: DisplayUnits): string {
  const gaps = pins
    .slice(1)
    .map(
      (pin) =>
        `${pinName(pin, units)} ${formatQuantity(pin.below, 'mm', 2)} (${formatQuantity(pin.below, 'thou', 0)})`,
    );
  const stretches = pins.map(
    (pin) =>
      `${pinName(pin, units)} ` +
      (pin.from === null || pin.to === null
        ? 'never'
        : `${formatQuantity(pin.from, units.range, 0)} to ${formatQuantity(pin.to, units.range, 0)}`),
  );
  const worst = between.reduce<(typeof between)[number] | null>(
    (a, b) => (b.height < 0 && (a === null || b.height < a.height) && b.pin < pins.length ? b : a),
    null,
  );
  const ringSize = formatQuantity(ring, units.smallLength, 0);
  const named = worst === null ? undefined : pins.find(({ pin }) => pin === worst.pin);
  return [
    ...(gaps.length === 0 ? [] : [`Below the first: ${gaps.join(', ')}.`]),
    `Dead on for a ring of ${ringSize}: ${stretches.join(', ')}.`,
    ...(worst === null || named === undefined
      ? []
      : [
          `Between pins: ${pinName(named, units)} at ${formatQuantity(worst.range, units.range, 0)}: ` +
            `${heightWords(worst.height, units, roughDigits(units))}.`,
        ]),
  ].join(' ');
}

export const PINS_NOTE =
  'down: below the first, along the line the pins stand on; thousandths are of an inch. from, to: the stretch around the ' +
  'range it is on for over which the arrow stays in the ring with the pin held on its middle.';

/** That the pins stay as they were set. */
export const STANDING_NOTE =
  "The pins stand as they were set at home with the file's own arrow; only what they hit is for here.";
