import { moistAir } from '../../../src/atmosphere/moist-air.ts';
import { at } from '../../../src/numerics/at.ts';
import { type RandomStream, randomStream } from '../../../src/numerics/random.ts';
import { FOOT, INCH } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { openSetup } from '../../../src/setup/open.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { yards } from '../sight/invented-rig.ts';

/** A bow as its archer measured it, in still air of 59 degF; the errors of those measurements are the file's defaults. */
export const fileWith = (rest: string): string => `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 452 gr, drag_coefficient: 2.4 }
launch: { speed: 281 fps }
air: { temperature: 59 degF, pressure: 1013.25 hPa, humidity: 50 % }
sight:
  peep_to_pin: 33 in
  zero_range: 20 yd
  scale: { travel_per_unit: 1 mm, increases: down, at_zero: 12.4 }
${rest}`;

export const measured = openSetup(fileWith(''), 'measured.yaml').assembly.rig;

/** The bow as it is: off from its measurements by what their standard uncertainties say. */
export function realBow({ normal }: Pick<RandomStream, 'normal'>): Rig {
  const { conditions, geometry, scale } = measured;
  const { arrow } = conditions;
  return {
    ...measured,
    launchSpeed: si(measured.launchSpeed + 1.5 * FOOT * normal()),
    geometry: { ...geometry, peepHeight: si(geometry.peepHeight + 0.1 * INCH * normal()) },
    conditions: { ...conditions, arrow: { ...arrow, dragScale: Math.max(0.4, 1 + 0.15 * normal()) } },
    scale: scale === null ? null : { ...scale, travelPerUnit: scale.travelPerUnit * (1 + 0.009 * normal()) },
  };
}

/** What a day is like. */
export interface InventedDay {
  readonly date: string;
  readonly kelvin: number;
  /** hPa. */
  readonly pressure: number;
  /** m/s beyond that of the bow. */
  readonly faster?: number;
  /** m that the peep has slipped up. */
  readonly slipped?: number;
}

/** The bow on a day, in air reckoned from the day's own temperature and pressure. */
export function bowOn(bow: Rig, { kelvin, pressure, faster = 0, slipped = 0 }: InventedDay): Rig {
  return {
    ...bow,
    launchSpeed: si(bow.launchSpeed + faster),
    geometry: { ...bow.geometry, peepHeight: si(bow.geometry.peepHeight + slipped) },
    conditions: {
      ...bow.conditions,
      air: moistAir({ temperature: si(kelvin), pressure: si(100 * pressure), humidity: si(0.5) }),
    },
  };
}

/**
 * What the sight reads on a day for a hit at the range, yd: the pin that hits, counted from the pin of the zero range on the
 * usual day, and from the peep that has slipped.
 */
export function readingOn(bow: Rig, day: InventedDay, range: number): number {
  const { slipped = 0 } = day;
  const usual = marksFor(bow, [yards(20)]).zero.down;
  const { zero, marks } = marksFor(bowOn(bow, day), [yards(range)]);
  const travel = zero.down + at(marks, 0).travel - slipped - usual;
  return 12.4 + travel / (bow.scale?.travelPerUnit ?? Number.NaN);
}

/** A day as its archer writes it down: groups of six, each mark with the group's own error, and a chronograph where it stood. */
export function writtenDay(
  bow: Rig,
  day: InventedDay,
  ranges: readonly number[],
  { normal }: Pick<RandomStream, 'normal'>,
  extra = '',
): string {
  const marks = ranges.map((range) => {
    // 0.02 in/yd an arrow, on the target; the height says how far off the middle was
    const off = ((0.02 * range) / Math.sqrt(6)) * normal();
    const size = 0.02 * range * 3.444;
    return (
      `    - { range: ${range} yd, reading: ${readingOn(bow, day, range).toFixed(3)}, range_sd: 0.01 yd, ` +
      `vertical: ${off.toFixed(4)} in, arrows: 6, group: ${size.toFixed(2)} in }`
    );
  });
  return `  - date: ${day.date}
    air: { temperature: ${day.kelvin} K, pressure: ${day.pressure} hPa, humidity: 50 % }
${extra}    marks:
${marks.map((line) => `  ${line}`).join('\n')}
`;
}

/** Numbers that are all the mean: no chance in it. */
export const EXACT = { normal: () => 0 };
export const stream = (seed: number, index: number): RandomStream => randomStream(seed, index);
