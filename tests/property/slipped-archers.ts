import { namedValues, PARAMETERS, withParameters } from '../../src/calibration/parameters.ts';
import { at } from '../../src/numerics/at.ts';
import { type RandomStream, randomStream } from '../../src/numerics/random.ts';
import { si } from '../../src/quantities/quantity.ts';
import { openSetup } from '../../src/setup/open.ts';
import { marksFor } from '../../src/sight/marks.ts';
import type { Rig } from '../../src/sight/rig.ts';

/**
 * Invented archers of several bows, each with true marks, and slips of the pen in one of them: what a file says beside what the
 * bow really does.
 */

const YARD = 0.9144;
const INCH = 0.0254;

/** A bow as its archer wrote it down. */
interface Bow {
  readonly name: string;
  readonly file: (scale: string) => string;
  /** Really, m. */
  readonly travelPerUnit: number;
  readonly increases: 'down' | 'up';
  readonly atZero: number;
  /** What the file says of the scale. */
  readonly isPitchKnown: boolean;
  readonly isZeroKnown: boolean;
  /** yd; the digits that a reading is written to. */
  readonly ranges: readonly (readonly number[])[];
  readonly digits: number;
  readonly arrows: number;
  /** Standard deviation of one arrow, in per yd. */
  readonly spread: number;
  readonly saysGroup: boolean;
}

const hunt = (scale: string): string => `
bow: { peak_draw_weight: 70 lbf, draw_length: 29 in, brace_height: 6.125 in, peep_height: 4.75 in }
arrow: { diameter: 0.265 in, mass: 454 gr, balance: 17.875 in, drag_coefficient: 2.2 }
launch: { speed: 281 fps }
air: { temperature: 68 degF, sea_level_pressure: 29.95 inHg, altitude: 1250 ft, humidity: 45 % }
sight: { peep_to_pin: 33.5 in, zero_range: 20 yd, scale: ${scale} }`;
const three = (scale: string): string => `
bow: { peak_draw_weight: 55 lbf, draw_length: 27.75 in, peep_height: 104 mm }
arrow: { diameter: 8.9 mm, mass: 22 g, drag_coefficient: 1.9 }
launch: { speed: 286 fps }
air: { temperature: 22 degC, pressure: 1002 hPa, humidity: 60 % }
sight: { peep_to_pin: 86 cm, zero_range: 20 yd, scale: ${scale} }`;
const youth = (scale: string): string => `
bow: { peak_draw_weight: 38 lbf, draw_length: 24.5 in, peep_height: 3.9 in }
arrow: { diameter: 0.295 in, mass: 318 gr, drag_coefficient: 2.2 }
launch: { speed: 208 fps }
sight: { peep_to_pin: 29 in, zero_range: 20 yd, scale: ${scale} }`;
const high = (scale: string): string => `
bow: { peak_draw_weight: 70 lbf, draw_length: 28.5 in, brace_height: 6.25 in, peep_height: 4.55 in }
arrow: { diameter: 0.244 in, mass: 463 gr, balance: 18.1 in, drag_coefficient: 2.5 }
launch: { speed: 283 fps, speed_sd: 1.5 fps }
air: { temperature: 52 degF, pressure: 763 hPa, humidity: 35 % }
sight: { peep_to_pin: 34.5 in, zero_range: 20 yd, scale: ${scale} }`;

const known = { isPitchKnown: true, isZeroKnown: true, saysGroup: true, digits: 1 } as const;

const BOWS: readonly Bow[] = [
  {
    ...known,
    name: 'hunt',
    file: hunt,
    travelPerUnit: 0.0005,
    increases: 'down',
    atZero: 14,
    ranges: [
      [20, 60],
      [20, 60, 80],
      [20, 40, 60, 80],
    ],
    arrows: 4,
    spread: 0.03,
  },
  {
    ...known,
    name: 'high camp',
    file: high,
    travelPerUnit: 0.001,
    increases: 'down',
    atZero: 8.2,
    ranges: [
      [20, 40, 60, 80],
      [20, 30, 40, 50, 60, 70],
    ],
    arrows: 5,
    spread: 0.03,
  },
  {
    ...known,
    name: 'three',
    file: three,
    travelPerUnit: 0.0006,
    increases: 'down',
    atZero: 12,
    isPitchKnown: false,
    ranges: [
      [20, 50],
      [20, 35, 50],
      [20, 30, 40, 50, 60],
    ],
    arrows: 3,
    spread: 0.025,
  },
  {
    ...known,
    name: 'youth',
    file: youth,
    travelPerUnit: 0.0008,
    increases: 'up',
    atZero: 62,
    isPitchKnown: false,
    isZeroKnown: false,
    saysGroup: false,
    digits: 0,
    ranges: [
      [20, 30, 40],
      [20, 30, 40, 50],
    ],
    arrows: 3,
    spread: 0.03,
  },
];

/** What can be wrong in what was written down. */
export const SLIPS = [
  'digits swapped',
  'metres for yards',
  'all in metres',
  "a neighbour's reading",
  'wrong direction',
  'wrong travel per unit',
  'a height turned',
  'a height in centimetres',
] as const;
export type Slip = (typeof SLIPS)[number] | 'none' | 'none of heights';
/** Of archers who set the sight by guess and wrote down how high each group was. */
const WITH_HEIGHTS: readonly Slip[] = ['a height turned', 'a height in centimetres', 'none of heights'];
/** What was written of a height, over what it was. */
const HEIGHT_TIMES: Partial<Record<Slip, number>> = {
  'a height turned': -1,
  'a height in centimetres': 2.54,
};
/** How far a guess of the setting puts a group off, in per yd: 4 in at 60 yd. */
const GUESS = 4 / 60;

export interface Case {
  readonly bow: string;
  readonly slip: Slip;
  readonly text: string;
  /** The range (yd) of the one mark that is wrong; null where all are, or none is. */
  readonly wrong: number | null;
  /** The bow as it is. */
  readonly real: Rig;
}

/** The archer `index`, with a slip. Null where the slip changes nothing, as swapping the digits of 44. */
export function slipped(slip: Slip, seed: number, index: number): Case | null {
  const bow = at(BOWS, index % BOWS.length);
  const ranges = at(bow.ranges, Math.floor(index / BOWS.length) % bow.ranges.length);
  const stream = randomStream(seed, index);
  const stated = scaleWords(bow, 1, bow.increases);
  const nominal = openSetup(bow.file(stated.measured), bow.name).assembly;
  const { priors } = nominal.problem;
  const real = withParameters(
    nominal.rig,
    namedValues(
      PARAMETERS.map((name) => {
        const { value, sd } = priors[name];
        if (name === 'scale_offset') return 0.2 * stream.normal();
        return name === 'drag_scale'
          ? Math.max(0.5, value + sd * stream.normal())
          : value + sd * stream.normal();
      }),
    ),
  );
  const target = pick(stream, ranges.length);
  const written = ranges.map((range, i) => {
    const isMetres = slip === 'all in metres' || (slip === 'metres for yards' && i === target);
    const shotAt = isMetres ? range : range * YARD;
    const guess = WITH_HEIGHTS.includes(slip) ? GUESS * range * INCH * stream.normal() : 0;
    const shot = shoot(real, bow, shotAt, stream, guess);
    const swap = slip === 'digits swapped' && i === target;
    const neighbour = slip === "a neighbour's reading" && i === target;
    const off = neighbour ? at(ranges, i === ranges.length - 1 ? i - 1 : i + 1) : range;
    const said = neighbour ? shoot(real, bow, off * YARD, stream) : shot;
    const text = said.reading.toFixed(bow.digits);
    return {
      range,
      reading: swap ? swapped(text, stream) : text,
      group: shot.group,
      height: heightWords(i, shot),
    };
  });
  function heightWords(i: number, { height }: { readonly height: number }): string {
    if (!WITH_HEIGHTS.includes(slip)) return '';
    const factor = i === target ? (HEIGHT_TIMES[slip] ?? 1) : 1;
    const said = (factor * height) / INCH;
    return `, vertical: ${said.toFixed(1)} in`;
  }
  const turned = { down: 'up', up: 'down' }[bow.increases];
  const increases = slip === 'wrong direction' ? turned : bow.increases;
  const times = slip === 'wrong travel per unit' ? at(TIMES, pick(stream, TIMES.length)) : 1;
  const marks = written.map(
    ({ range, reading, group, height }) =>
      `  - { range: ${range} yd, reading: ${reading}, arrows: ${bow.arrows}` +
      `${bow.saysGroup ? `, group: ${group} in` : ''}${height} }\n`,
  );
  const scale = scaleWords(bow, times, increases).said;
  const single = IN_ONE.includes(slip);
  if (slip === 'wrong travel per unit' && !bow.isPitchKnown) return null;
  if (at(written, target).reading === UNCHANGED) return null;
  return {
    bow: `${bow.name} ${ranges.length}`,
    slip,
    text: `${bow.file(scale)}\nmarks:\n${marks.join('')}`,
    wrong: single ? at(ranges, target) : null,
    real,
  };
}

/** Slips in one mark. */
const IN_ONE: readonly Slip[] = [
  'digits swapped',
  'metres for yards',
  "a neighbour's reading",
  'a height turned',
  'a height in centimetres',
];

/** What was taken for a unit of the scale, over what it is: a geared wheel, a guess. */
const TIMES = [0.5, 0.67, 0.8, 1.25, 1.5, 2];
const pick = (stream: RandomStream, count: number): number => Math.floor(stream.uniform() * count) % count;
const UNCHANGED = 'unchanged';

function scaleWords(bow: Bow, times: number, increases: string): { said: string; measured: string } {
  const pitch = `${1000 * bow.travelPerUnit * times} mm`;
  const zero = `, at_zero: ${bow.atZero}`;
  return {
    measured: `{ travel_per_unit: ${1000 * bow.travelPerUnit} mm, increases: ${bow.increases}${zero} }`,
    said: `{ travel_per_unit: ${bow.isPitchKnown ? pitch : 'unknown'}, increases: ${increases}${bow.isZeroKnown ? zero : ''} }`,
  };
}

const readingOf = ({ scale }: Rig, travel: number): number =>
  scale === null ? Number.NaN : scale.atZero + (scale.direction * travel) / scale.travelPerUnit;

/**
 * A group at a range (m), and what the sight read: moved until the middle is on the aim, or, with a `guess` that put it that far
 * high (m), as it stood.
 */
function shoot(real: Rig, bow: Bow, range: number, stream: RandomStream, guess = 0) {
  const hits = Array.from({ length: bow.arrows }, () => [stream.normal(), stream.normal()] as const);
  const apart = hits.flatMap(([x, y], i) => hits.slice(i + 1).map(([u, v]) => Math.hypot(x - u, y - v)));
  const arrow = bow.spread * (range / YARD) * INCH;
  const middle = (arrow * hits.reduce((sum, [, y]) => sum + y, 0)) / bow.arrows;
  const mark = at(marksFor(real, [si(range)]).marks, 0);
  const moved = guess === 0 ? -middle : guess;
  return {
    reading: readingOf(real, mark.travel + moved / mark.heightPerTravel),
    height: guess + middle,
    group: ((Math.max(...apart) * arrow) / INCH).toFixed(2),
  };
}

/** Two neighbouring digits in each other's place. */
function swapped(text: string, stream: RandomStream): string {
  const pairs = [...text].flatMap((digit, i) => {
    const next = text[i + 1];
    return next === undefined || next === '.' || digit === '.' || next === digit ? [] : [i];
  });
  if (pairs.length === 0) return UNCHANGED;
  const i = at(pairs, pick(stream, pairs.length));
  return text.slice(0, i) + text.slice(i + 1, i + 2) + text.slice(i, i + 1) + text.slice(i + 2);
}
