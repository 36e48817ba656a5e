import { unitsOf } from '../../calibration/units-of.ts';
import { at } from '../../numerics/at.ts';
import { STANDARD_GRAVITY } from '../../quantities/exact.ts';
import { fromSi } from '../../quantities/format.ts';
import { si } from '../../quantities/quantity.ts';
import { DEFAULT_WORDS, defaultOf } from '../assemble/defaults.ts';
import type { KeyPath } from '../key-path.ts';
import { withUnit } from '../schema/refusal.ts';
import type { SetupFile } from '../schema/schema.ts';
import type { Fault } from './fault.ts';

/** Speed to judge by when the file leaves it to the bow's rating: as fast as bows are, m/s. */
const FAST_BOW_SPEED = 110;
/** How far beyond the turning point marks must be to show which way a scale runs; drag and the shot's error are in it. */
const WELL_BEYOND = 1.15;

interface Read {
  readonly range: number;
  readonly reading: number;
  /** Where in the file it was written. */
  readonly path: KeyPath;
}

/**
 * Whether the readings grow the way `increases` says. The pin's angle below the arrow is about h/R + g R/(2 v²), which
 * turns back at R = v √(2h/g): only marks beyond that count, unless all together are to measure the scale.
 */
export function scaleDirectionFaults(setup: SetupFile): readonly Fault[] {
  const { sight, launch, bow } = setup;
  const { scale } = sight;
  if (scale === undefined) return [];
  const speed = typeof launch.speed === 'number' ? launch.speed : FAST_BOW_SPEED;
  const turning = WELL_BEYOND * speed * Math.sqrt((2 * bow.peep_height) / STANDARD_GRAVITY);
  const shot = readings(setup);
  const zero: readonly Read[] =
    scale.at_zero === undefined
      ? []
      : [
          {
            range: sight.zero_range ?? defaultOf('sight.zero_range'),
            reading: scale.at_zero,
            path: ['sight', 'scale', 'at_zero'],
          },
        ];
  const all = [...zero, ...shot].toSorted((a, b) => a.range - b.range);
  const far = stepsOf(all.filter(({ range }) => range >= turning));
  const unknown = scale.travel_per_unit === 'unknown';
  if (shot.length === 0) return [];
  if (unknown && far.length > 0 && far.every(({ step }) => step === 0)) return [EQUAL];
  const says = scale.increases ?? DEFAULT_WORDS['sight.scale.increases'];
  const way = says === 'down' ? 1 : -1;
  const [worst] = far.filter(({ step }) => way * step < 0).toSorted((a, b) => way * (a.step - b.step));
  if (far.length > 0 && far.every(({ step }) => way * step < 0) && worst !== undefined)
    return [runsTheOtherWay(worst, says, scale.increases === undefined)];
  const angle = (range: number): number =>
    bow.peep_height / range + (STANDARD_GRAVITY * range) / (2 * speed ** 2);
  if (!unknown || all.length < 2 || way * slope(all, angle) > 0) return [];
  const steps = stepsOf(all).map((pair) => ({
    ...pair,
    down: angle(pair.far.range) - angle(pair.near.range),
  }));
  const [back] = steps
    .filter(({ step, down }) => way * step * Math.sign(down) < 0)
    .toSorted((a, b) => Math.abs(b.step) - Math.abs(a.step));
  return back === undefined ? [] : [runsBack(back, back.down > 0, says)];
}

/** Every reading of the file beside where it stands. */
function readings({ marks = [], days = [] }: SetupFile): readonly Read[] {
  const read = (entries: NonNullable<SetupFile['marks']>, path: KeyPath): readonly Read[] =>
    entries.flatMap(({ range, reading }, i) =>
      reading === undefined ? [] : [{ range, reading, path: [...path, i, 'reading'] }],
    );
  return [
    ...read(marks, ['marks']),
    ...days.flatMap(({ marks: shot = [] }, i) => read(shot, ['days', i, 'marks'])),
  ];
}

/** A reading beside that of the next farther range. */
interface Step {
  readonly near: Read;
  readonly far: Read;
  /** Of the readings, from the nearer to the farther range. */
  readonly step: number;
}

const stepsOf = (sorted: readonly Read[]): readonly Step[] =>
  sorted.slice(1).flatMap((far, i): readonly Step[] => {
    const near = at(sorted, i);
    return near.range === far.range ? [] : [{ near, far, step: far.reading - near.reading }];
  });

/** Of the straight line through the readings against the angles, up to a positive factor. */
function slope(points: readonly Read[], angle: (range: number) => number): number {
  const middle = points.reduce((sum, { range }) => sum + angle(range), 0) / points.length;
  return points.reduce((sum, { range, reading }) => sum + (angle(range) - middle) * reading, 0);
}

const EQUAL: Fault = {
  path: ['marks'],
  at: 'key',
  reason: 'marks at different ranges have the same reading, so they cannot measure the travel for one unit',
  allowed: 'readings that differ from range to range while travel_per_unit is unknown',
  write: 'Write what the scale read at each range, or write the travel_per_unit',
};

/** A reading and its range as the file writes them: "14 at 20 yd". */
function placed({ range, reading }: Read): string {
  const [unit = 'yd'] = unitsOf([{ range: si(range) }]);
  return `${reading} at ${withUnit(Number(fromSi(range, unit).toFixed(1)), unit)}`;
}

/** Readings without which the scale would run the way the file says. */
function runsBack({ near, far }: Step, isDown: boolean, says: 'down' | 'up'): Fault {
  const other = says === 'down' ? 'up' : 'down';
  const pin = isDown ? 'lower' : 'higher';
  return {
    path: far.path,
    at: 'value',
    reason:
      `${placed(near)} and ${placed(far)} run the wrong way: the pin stands ${pin} for the farther one, ` +
      'and the numbers grow as the ' +
      `pin goes ${says}`,
    allowed: 'readings that together tell which way and how far one unit of the scale moves the pin',
    write: `Correct the reading or the range that is wrong, or write "increases: ${other}"`,
  };
}

function runsTheOtherWay({ near, far }: Step, says: 'down' | 'up', unsaid: boolean): Fault {
  const other = says === 'down' ? 'up' : 'down';
  const run = says === 'down' ? 'fall' : 'grow';
  const assumed = unsaid ? '; without this key they are assumed to grow' : '';
  return {
    path: ['sight', 'scale', 'increases'],
    at: unsaid ? 'missing' : 'value',
    reason:
      `the readings of the marks ${run} towards longer ranges (${placed(near)}, ${placed(far)}), although ` +
      'the pin goes down for ' +
      `them${assumed}`,
    allowed: 'down when the numbers grow as the pin goes down, up when they grow as it goes up',
    write: `${unsaid ? 'Add' : 'Write'} "increases: ${other}", or correct the readings`,
  };
}
