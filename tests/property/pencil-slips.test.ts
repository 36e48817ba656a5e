import { expect, it } from 'vitest';
import { at } from '../../src/numerics/at.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { ask } from '../../src/reports/ask.ts';
import { ContradictionError } from '../../src/reports/asked/contradiction-error.ts';
import { openSetup } from '../../src/setup/open.ts';
import { SetupError } from '../../src/setup/problem.ts';
import { marksFor } from '../../src/sight/marks.ts';
import { tapePlaces } from '../../src/sight/tape.ts';
import { realBow } from '../unit/calibration/invented-days.ts';
import { yards } from '../unit/sight/invented-rig.ts';

const SEED = 17;
const ARCHERS = 30;
const SLIPS = ['none', 'digits swapped', "a neighbour's line", 'metres for yards'] as const;
const RANGES = [
  [30, 50, 70],
  [30, 40, 50, 60],
  [20, 30, 40, 50, 60, 80],
];
const FOUR_INCHES = 0.1016; // m
const SLOPE = 0.03 / 36; // m of one arrow's standard deviation per m of range: 0.03 in per yd

/** Two neighbouring digits in each other's place: 27.5 becomes 72.5. */
const swapped = (text: string): string => text.replace(/(\d)(\d)/, '$2$1');

/** The strip of an archer with pencil lines as shot, one of them wrong. */
function stripOf(slip: (typeof SLIPS)[number], index: number) {
  const stream = randomStream(SEED, index);
  const bow = realBow(stream);
  // Evenly over the factor from 0.6 to 2.5.
  const gearing = 0.6 * (2.5 / 0.6) ** (index / (ARCHERS - 1));
  const ranges = at(RANGES, index % RANGES.length);
  const wrong = 1 + Math.floor(stream.uniform() * (ranges.length - 1));
  const lineAt = (range: number): number => {
    const { travel, heightPerTravel } = at(marksFor(bow, [range]).marks, 0);
    const middle = (SLOPE * range * stream.normal()) / Math.sqrt(6);
    return 1000 * gearing * (travel - middle / heightPerTravel) + 0.3 * stream.normal();
  };
  const lines = ranges.map((range, i) => {
    const isWrong = i === wrong;
    const really = isWrong && slip === "a neighbour's line" ? at(ranges, i - 1) : range;
    const line = lineAt(isWrong && slip === 'metres for yards' ? range : yards(really)).toFixed(1);
    return isWrong && slip === 'digits swapped' ? swapped(line) : line;
  });
  const text = `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 452 gr, drag_coefficient: 2.4 }
launch: { speed: 281 fps }
air: { temperature: 59 degF, pressure: 1013.25 hPa, humidity: 50 % }
sight: { peep_to_pin: 33 in, zero_range: 20 yd }
marks:
${ranges.map((range, i) => `  - { range: ${range} yd, on_tape: ${at(lines, i)} mm, arrows: 6 }\n`).join('')}`;
  return { bow, gearing, text };
}

/** How far off the archer's own strip the tape's line of 100 yd is, on the target, m; null where no tape is drawn silently. */
async function missOf(slip: (typeof SLIPS)[number], index: number): Promise<number | null> {
  const { bow, gearing, text } = stripOf(slip, index);
  try {
    const open = openSetup(text, 'strip.yaml');
    const { data } = await ask('tape', open);
    if ('warnings' in data && Array.isArray(data.warnings) && data.warnings.length > 0) return null;
    const { tape_ratio: ratio = Number.NaN, scale_offset: offset } = open.calibration.values;
    const drawn = at(tapePlaces(open.calibration.rig, [yards(100)], ratio), 0).along + ratio * offset;
    const { travel, heightPerTravel } = at(marksFor(bow, [yards(100)]).marks, 0);
    return Math.abs((drawn / gearing - travel) * heightPerTravel);
  } catch (error) {
    if (error instanceof SetupError || error instanceof ContradictionError) return null;
    throw error;
  }
}

it.each(SLIPS.slice(1))(
  'of thirty strips with %s none misses at 100 yd without a word on it',
  async (slip) => {
    const misses = await Promise.all(Array.from({ length: ARCHERS }, (_, i) => missOf(slip, i)));
    expect(misses.filter((miss) => miss !== null && !(miss <= FOUR_INCHES))).toEqual([]);
  },
);

it('of thirty honest strips at most one is refused', () => {
  const contradicted = Array.from({ length: ARCHERS }, (_, i) =>
    openSetup(stripOf('none', i).text, 's.yaml'),
  ).filter(({ disagreement }) => disagreement?.isContradiction === true);
  expect(contradicted.length).toBeLessThanOrEqual(1);
});
