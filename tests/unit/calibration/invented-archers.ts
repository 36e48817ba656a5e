import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import { namedValues, withParameters } from '../../../src/calibration/parameters.ts';
import { at } from '../../../src/numerics/at.ts';
import { type RandomStream, randomStream } from '../../../src/numerics/random.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { type OpenSetup, openSetup } from '../../../src/setup/open.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { yards } from '../sight/invented-rig.ts';

/** What is different on the evening a mark was shot. */
export interface Evening {
  /** m/s. */
  readonly speed?: number;
  /** m/s, from behind. */
  readonly tailWind?: number;
  /** Relative. */
  readonly density?: number;
}

/** How a mark of an invented archer came about. */
export interface ShotAt {
  /** yd. */
  readonly range: number;
  readonly arrows: number;
  readonly evening?: Evening;
  readonly date?: string;
}

export interface Archer {
  readonly shots: readonly ShotAt[];
  /** Standard deviation of one arrow, in per yd. */
  readonly spread: number;
  /** Of the ranges, yd. */
  readonly rangeError?: number;
}

const INCH = 0.0254;

/** The bow as its archer measured it; the errors of those measurements are the file's defaults. */
const fileWith = (marks: readonly string[]): string => `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 452 gr, drag_coefficient: 2.4 }
launch: { speed: 281 fps }
air: { temperature: 59 degF, pressure: 29.92 inHg, humidity: 50 % }
sight:
  peep_to_pin: 33 in
  zero_range: 20 yd
  scale: { travel_per_unit: 1 mm, increases: down, at_zero: 12.4 }
${marks.length === 0 ? '' : 'marks:\n'}${marks.map((mark) => `  - ${mark}\n`).join('')}`;

const measured = openSetup(fileWith([]), 'measured.yaml').assembly.rig;

/** The bow as it is: off from its measurements by what their standard uncertainties say. */
function realBow({ normal }: RandomStream): Rig {
  const found = withParameters(
    measured,
    namedValues([
      measured.launchSpeed + 1.5 * 0.3048 * normal(),
      Math.max(0.4, 1 + 0.15 * normal()),
      measured.geometry.peepHeight + 0.1 * INCH * normal(),
      Math.hypot(1) + Math.hypot(0.25 / 33, 0.005) * normal(),
      0.3 * normal(),
    ]),
  );
  return found;
}

function onEvening(bow: Rig, { speed = 0, tailWind = 0, density = 0 }: Evening): Rig {
  const { air, wind } = bow.conditions;
  return {
    ...bow,
    launchSpeed: si(bow.launchSpeed + speed),
    conditions: {
      ...bow.conditions,
      air: { ...air, density: si(air.density * (1 + density)) },
      wind: { ...wind, tail: si(wind.tail + tailWind) },
    },
  };
}

/** The largest distance between two of `arrows` hits, and the middle's height, for arrows of standard deviation 1. */
function groupOf({ normal }: RandomStream, arrows: number): { spread: number; middle: number; side: number } {
  const hits = Array.from({ length: arrows }, () => [normal(), normal()] as const);
  const apart = hits.flatMap(([x, y], i) => hits.slice(i + 1).map(([u, v]) => Math.hypot(x - u, y - v)));
  const mean = (axis: 0 | 1): number => hits.reduce((sum, hit) => sum + hit[axis], 0) / arrows;
  return { spread: Math.max(...apart), middle: mean(1), side: mean(0) };
}

/** One mark as the archer writes it down: the sight moved until the group's middle was on the aim, and read to a tenth. */
function writtenMark(
  bow: Rig,
  { shots: _shots, spread, rangeError = 0 }: Archer,
  shot: ShotAt,
  stream: RandomStream,
): string {
  const day = onEvening(bow, shot.evening ?? {});
  const real = yards(shot.range) + yards(rangeError) * stream.normal();
  const group = groupOf(stream, shot.arrows);
  const usual = marksFor(bow, [yards(20)]);
  const table = marksFor(day, [real]);
  const mark = at(table.marks, 0);
  const arrow = spread * shot.range * INCH;
  const scale = bow.scale ?? { travelPerUnit: 1, direction: 1, atZero: 0 };
  const travel =
    table.zero.down + mark.travel - usual.zero.down - (group.middle * arrow) / mark.heightPerTravel;
  const reading = scale.atZero + travel / scale.travelPerUnit;
  const date = shot.date === undefined ? '' : `, date: ${shot.date}`;
  const size = (group.spread * spread * shot.range).toFixed(2);
  return `{ range: ${shot.range} yd, reading: ${reading.toFixed(1)}, arrows: ${shot.arrows}, group: ${size} in${date} }`;
}

export interface Trial {
  readonly bow: Rig;
  readonly text: string;
  readonly open: OpenSetup;
}

export function trial(archer: Archer, seed: number, index: number): Trial {
  const stream = randomStream(seed, index);
  const bow = realBow(stream);
  const text = fileWith(archer.shots.map((shot) => writtenMark(bow, archer, shot, stream)));
  return { bow, text, open: openSetup(text, 'archer.yaml') };
}

/** Errors of the readings at these ranges (m) over their stated standard uncertainties, and on the target, m. */
export function readingErrors({ bow, open: { calibration } }: Trial, ranges: readonly number[]) {
  const table = marksFor(calibration.rig, ranges);
  const real = marksFor(bow, ranges);
  return markUncertainty(calibration, table).map(({ readingSd, heightPerUnit }, i) => {
    const off = Number(at(table.marks, i).reading) - Number(at(real.marks, i).reading);
    return { score: off / readingSd, off: off * heightPerUnit, sd: Math.abs(readingSd * heightPerUnit) };
  });
}

export const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
