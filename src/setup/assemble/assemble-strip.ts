import type { Prior } from '../../calibration/parameters.ts';
import { at } from '../../numerics/at.ts';
import { marksFor } from '../../sight/marks.ts';
import type { Rig } from '../../sight/rig.ts';
import type { SetupFile } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';
import { shotsIn } from './shots.ts';
import { statedSd } from './stated-sd.ts';

/**
 * Wider than any gearing of a sight is off from the first value, so that the pencil lines alone decide; the yardstick is a
 * ratio to 10 %. Of the first value.
 */
const UNKNOWN_RATIO = { sd: 10, yardstick: 0.2 };

/**
 * What is known of the travel of a strip over the travel of the pin before its pencil lines: as the file gives it, to the
 * error of the way from peep to pin, or nothing but a first value.
 *
 * @returns null for a file without pencil lines
 */
export function ratioPrior(bare: Rig, setup: SetupFile): Prior | null {
  const lines = shotsIn(setup).marks.flatMap(({ range, on_tape: place }) =>
    place === undefined ? [] : [{ range, place }],
  );
  if (lines.length === 0) return null;
  const { sight } = setup;
  const ratio = sight.tape?.travel_ratio;
  if (typeof ratio === 'number') {
    const eye = (statedSd.peepToPin(sight) ?? defaultOf('sight.peep_to_pin_sd')) / sight.peep_to_pin;
    const stated = sight.tape === undefined ? undefined : statedSd.travelRatio(sight.tape);
    const own = stated === undefined ? defaultOf('sight.scale.travel_per_unit_relative_sd') : stated / ratio;
    return { value: ratio, sd: ratio * Math.hypot(eye, own) };
  }
  const value = firstRatio(bare, lines);
  return { value, sd: UNKNOWN_RATIO.sd * value, yardstick: UNKNOWN_RATIO.yardstick * value };
}

interface Line {
  readonly range: number;
  readonly place: number;
}

/** The straight line through the zero range's through the lines, against the travel that the uncalibrated rig predicts. */
function firstRatio(bare: Rig, lines: readonly Line[]): number {
  const { marks } = marksFor(
    bare,
    lines.map(({ range }) => range),
  );
  const travels = marks.map(({ travel }): number => travel);
  const size = travels.reduce((sum, travel) => sum + travel ** 2, 0);
  const ratio = lines.reduce((sum, { place }, i) => sum + place * at(travels, i), 0) / size;
  // Lines at the zero range alone, or that run the other way, tell none.
  return ratio > 0 && Number.isFinite(ratio) ? ratio : defaultOf('sight.tape.travel_ratio');
}
