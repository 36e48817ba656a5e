import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { MarkEntry, SetupFile } from '../schema/schema.ts';
import { fixedPins, sliderPins } from './pins.ts';
import { shotsIn } from './shots.ts';

/** Two groups shot with one fixed pin, whose own place is unknown: only the height between them says something of the flight. */
interface PinPair {
  readonly pin: number;
  readonly near: MarkEntry;
  readonly far: MarkEntry;
}

/** What marks that name a pin do for the fit. */
interface PinShots {
  /** Of fixed pins shot at two ranges or more on one day: the nearest and the farthest. */
  readonly pairs: readonly PinPair[];
  /** Lower pins of a slider, at a known place below the top one. */
  readonly lower: readonly { readonly entry: MarkEntry; readonly below: Metres }[];
  /** Numbers of pins that were shot but say nothing of the flight: their marks only place them. */
  readonly placedOnly: readonly number[];
}

/** Groups of one pin this near to one another in range say nothing of the flight, m. */
const APART = 4;

/** A lower pin of a slider serves only where the travel per unit of its scale was measured. */
export function pinShotsIn(setup: SetupFile): PinShots {
  const marks = shotsIn(setup).marks;
  const slider = sliderPins(setup.sight);
  const pitch = setup.sight.scale?.travel_per_unit;
  const lower =
    slider === null || pitch === undefined || pitch === 'unknown'
      ? []
      : marks.flatMap((entry) =>
          entry.pin === undefined || entry.pin === 1 || entry.reading === undefined
            ? []
            : [{ entry, below: at(slider, entry.pin - 1) }],
        );
  const named =
    fixedPins(setup.sight) === null
      ? []
      : marks.filter(({ pin, reading }) => pin !== undefined && reading === undefined);
  const pairs = namesOf(named).flatMap(({ pin, date }): readonly PinPair[] => {
    const shot = named
      .filter((entry) => entry.pin === pin && entry.date === date)
      .toSorted((a, b) => a.range - b.range);
    const [near, far] = [shot[0], shot.at(-1)];
    return near === undefined || far === undefined || far.range - near.range < APART
      ? []
      : [{ pin, near, far }];
  });
  const used = new Set([...pairs.map(({ pin }) => pin), ...lower.map(({ entry }) => entry.pin)]);
  const shotPins = marks.flatMap(({ pin, reading }) =>
    pin === undefined || (pin === 1 && reading !== undefined) ? [] : [pin],
  );
  return {
    pairs,
    lower,
    placedOnly: [...new Set(shotPins)].filter((pin) => !used.has(pin)).toSorted((a, b) => a - b),
  };
}

/** Every pin on every day that it was shot on, once. */
function namesOf(
  marks: readonly MarkEntry[],
): readonly { readonly pin: number; readonly date: string | undefined }[] {
  const all = marks.flatMap(({ pin, date }) => (pin === undefined ? [] : [{ pin, date }]));
  return all.filter((one, i) => all.findIndex(({ pin, date }) => pin === one.pin && date === one.date) === i);
}

/**
 * How far the farther group of a pin lies below where the pin would hit if it were on for the nearer range.
 *
 * @param sdOf standard uncertainty of a group's height, m
 */
export function dropOf({ near, far }: PinPair, sdOf: (entry: MarkEntry) => number) {
  const farther = far.range / near.range;
  return {
    kind: 'drop' as const,
    aimedWith: near.range,
    range: far.range,
    drop: si<'m'>(heightOf(near) * farther - heightOf(far)),
    sd: si<'m'>(Math.hypot(sdOf(far), sdOf(near) * farther)),
  };
}

const heightOf = ({ vertical }: MarkEntry): number => (vertical === undefined ? 0 : vertical);
