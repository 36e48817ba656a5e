import { equalFlyer, type FlyerFor } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { type Metres, type MetresPerSecond, si } from '../quantities/quantity.ts';
import { type Setting, settingsFor } from './marks.ts';
import { asFarAsItGoes, type Reach } from './reach.ts';
import type { Rig } from './rig.ts';

/** `near`: inside the range whose mark is lowest, where marks turn back and a place on the scale serves two ranges. */
type Branch = 'far' | 'near';

/** Where one range stands on a tape. */
export interface TapePlace {
  readonly range: Metres;
  /** Along the tape from the place of the zero range, positive towards longer ranges. */
  readonly along: Metres;
  readonly branch: Branch;
}

/** A range that a tape is to show, and the number printed beside it. */
export interface TapeRange {
  readonly range: Metres;
  readonly label: number;
}

export interface LabelledPlace extends TapePlace {
  readonly label: number;
}

/** The places of one tape, and why it is shorter than was asked for. */
export interface Tape extends Reach {
  readonly ticks: readonly LabelledPlace[];
  /** The first range left out because the arrow would touch the sight. */
  readonly endsBefore: Metres | null;
  /** The first range for which the slider does not go low enough. */
  readonly sliderEndsBefore: Metres | null;
  /** Whether ranges were left out because the slider does not go high enough. */
  readonly sliderTooLow: boolean;
}

/** How far a slider goes; null where nobody has measured it. */
export interface Slider {
  /** From its highest place to its lowest. */
  readonly length: Metres | null;
  /** From its place at the zero range to its highest. */
  readonly aboveZero: Metres | null;
}

export const ENDLESS_SLIDER: Slider = { length: null, aboveZero: null };
/** A slider that stands this little beyond its end, m, is still at it: what a ruler cannot see. */
export const AT_ITS_END = 1e-5;

/**
 * The law of a tape: where each range stands along it.
 *
 *   along = (pin at the range - pin at the zero range) x ratio
 *
 * A mark on the rising part of the path belongs to the near branch. Where the arrow's vanes would touch the sight the tape
 * ends: on the far branch with the first such range, while on the near branch, where marks turn back, only the ranges that
 * touch are left out.
 *
 * @param ranges rising, m, and their labels
 * Where the slider ends, the tape ends too. A slider whose highest place is not known is taken to stand there for the highest
 * of the marks.
 *
 * @param ratio of the way along the tape to the travel of the pin: 1 for a tape beside the pin, another for one on a wheel
 *   or a lever
 * @throws NumericalError when the arrow gets to none of the ranges
 */
export function tapeOf(
  rig: Rig,
  ranges: readonly TapeRange[],
  ratio: number,
  slider: Slider = ENDLESS_SLIDER,
  fly?: FlyerFor,
): Tape {
  const { solved, ...reach } = asFarAsItGoes(
    rig,
    ranges.map(({ range }) => range),
    (reached) => settingsFor(rig, reached, fly),
  );
  const touches = solved.find(({ rising, clearance }) => !rising && clearance < 0);
  const endsBefore = touches?.range ?? null;
  const clear = ({ range, clearance }: Setting): boolean =>
    clearance >= 0 && (endsBefore === null || range < endsBefore);
  const highest = slider.aboveZero === null ? null : -slider.aboveZero - AT_ITS_END;
  const tooHigh = ({ travel }: Setting): boolean => highest !== null && travel < highest;
  const lowest = lowestOf(slider, solved.filter(clear));
  const lowEnd = solved.find(({ rising, travel }) => !rising && travel > lowest);
  const sliderEndsBefore = lowEnd?.range ?? null;
  return {
    ticks: solved.flatMap((setting, i) =>
      clear(setting) && !tooHigh(setting) && setting.travel <= lowest
        ? [{ ...placeOf(setting, ratio), label: at(ranges, i).label }]
        : [],
    ),
    endsBefore,
    ...reach,
    sliderEndsBefore:
      sliderEndsBefore !== null && (endsBefore === null || sliderEndsBefore < endsBefore)
        ? sliderEndsBefore
        : null,
    sliderTooLow: solved.some((setting) => clear(setting) && tooHigh(setting)),
  };
}

/** The travel at the slider's lowest place, positive down from the zero range's. */
function lowestOf({ length, aboveZero }: Slider, settings: readonly Setting[]): number {
  if (length === null) return Number.POSITIVE_INFINITY;
  const highest =
    aboveZero === null
      ? settings.map(({ travel }) => travel).reduce((a, b) => Math.min(a, b), 0)
      : -aboveZero;
  return highest + length + AT_ITS_END;
}

/** The places of single ranges (m, any order), whether or not a tape shows them. Errors as for `settingsFor`. */
export const tapePlaces = (rig: Rig, ranges: readonly number[], ratio: number): readonly TapePlace[] =>
  settingsFor(rig, ranges, equalFlyer).map((setting) => placeOf(setting, ratio));

const placeOf = ({ range, travel, rising }: Setting, ratio: number): TapePlace => ({
  range,
  along: si(travel * ratio),
  branch: rising ? 'near' : 'far',
});

/** A tape for a launch that differs in its speed alone. */
export interface NeighbourStrip {
  /** Faster than the rig's own by this much; slower when negative. */
  readonly faster: MetresPerSecond;
  readonly tape: Tape;
}

/**
 * Tapes for arrows launched slower and faster by whole steps, slowest first, the rig's own left out. They are to look at, and
 * flown in equal steps.
 *
 * @param count on each side
 * @param step m/s
 */
export function neighbourStrips(
  rig: Rig,
  ranges: readonly TapeRange[],
  ratio: number,
  { count, step }: { readonly count: number; readonly step: number },
  slider: Slider = ENDLESS_SLIDER,
): readonly NeighbourStrip[] {
  const sides = Array.from({ length: count }, (_, i) => i + 1);
  return [...sides.map((n) => -n).reverse(), ...sides].map((n) => ({
    faster: si(n * step),
    tape: tapeOf({ ...rig, launchSpeed: si(rig.launchSpeed + n * step) }, ranges, ratio, slider, equalFlyer),
  }));
}

/** From the outermost place to the other; marks that turn back lie between. 0 for a tape without places. */
export function tapeLength(places: readonly TapePlace[]): Metres {
  if (places.length === 0) return si(0);
  const along = places.map((place) => place.along);
  return si(Math.max(...along) - Math.min(...along));
}
