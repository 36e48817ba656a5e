import { formatQuantity } from '../../quantities/format.ts';
import { pinShotsIn } from '../../setup/assemble/pin-shots.ts';
import { listed } from '../listed.ts';
import type { Session } from '../session.ts';

/** What marks that name a pin did for the fit, a line each. */
export function pinLines({ setup, units }: Pick<Session, 'setup' | 'units'>): readonly string[] {
  const { pairs, lower, placedOnly } = pinShotsIn(setup);
  const inRange = (range: number): string => formatQuantity(range, units.range, 0);
  return [
    ...pairs.map(
      ({ pin, near, far }) =>
        `Pin ${pin} was shot at ${inRange(near.range)} and ${inRange(far.range)}: the drop from the one to the other is ` +
        'counted, the place of the pin is not.',
    ),
    ...(lower.length === 0
      ? []
      : [
          `Counted at the place of the lower pin that was held: ${listed(
            lower.map(({ entry }) => `${inRange(entry.range)} (pin ${entry.pin})`),
          )}.`,
        ]),
    ...(placedOnly.length === 0
      ? []
      : [
          `Only the place of the pin comes from the marks of ${placedOnly.length === 1 ? 'pin' : 'pins'} ` +
            `${listed(placedOnly.map(String))} (quillpath pins); the same pin shot at a second range would tell of the flight.`,
        ]),
  ];
}

/** The same for programs. */
export function pinData({ setup }: Pick<Session, 'setup'>): object {
  const { pairs, lower, placedOnly } = pinShotsIn(setup);
  return {
    drops: pairs.map(({ pin, near, far }) => ({ pin, aimed_with_m: near.range, range_m: far.range })),
    lower: lower.map(({ entry, below }) => ({
      pin: entry.pin,
      range_m: entry.range,
      below_m: below,
    })),
    placed_only: placedOnly,
  };
}
