import { STANDARD_GRAVITY } from '../../quantities/exact.ts';
import { DEFAULT_WORDS, defaultOf } from '../assemble/defaults.ts';
import { shotsIn } from '../assemble/shots.ts';
import type { SetupFile } from '../schema/schema.ts';
import type { Fault } from './fault.ts';

/** Speed to judge by when the file leaves it to the bow's rating: as fast as bows are, m/s. */
const FAST_BOW_SPEED = 110;
/** How far beyond the turning point marks must be to show which way a scale runs; drag and the shot's error are in it. */
const WELL_BEYOND = 1.15;

interface Read {
  readonly range: number;
  readonly reading: number;
}

/**
 * Whether the readings grow the way `increases` says. The pin's angle below the arrow is about h/R + g R/(2 v²), which
 * turns back at R = v √(2h/g): only marks beyond that count.
 */
export function scaleDirectionFaults(setup: SetupFile): readonly Fault[] {
  const { sight, launch, bow } = setup;
  const { scale } = sight;
  const { marks } = shotsIn(setup);
  if (scale === undefined) return [];
  const speed = typeof launch.speed === 'number' ? launch.speed : FAST_BOW_SPEED;
  const turning = WELL_BEYOND * speed * Math.sqrt((2 * bow.peep_height) / STANDARD_GRAVITY);
  const zero: readonly Read[] =
    scale.at_zero === undefined
      ? []
      : [{ range: sight.zero_range ?? defaultOf('sight.zero_range'), reading: scale.at_zero }];
  const shot = marks.flatMap(({ range, reading }) => (reading === undefined ? [] : [{ range, reading }]));
  const far = [...zero, ...shot]
    .filter(({ range }) => range >= turning)
    .toSorted((a, b) => a.range - b.range);
  const steps = far.slice(1).flatMap(({ range, reading }, i) => {
    const before = far[i];
    return before === undefined || range === before.range ? [] : [reading - before.reading];
  });
  if (shot.length === 0 || steps.length === 0) return [];
  const unknown = scale.travel_per_unit === 'unknown';
  if (unknown && steps.every((step) => step === 0)) return [EQUAL];
  const says = scale.increases ?? DEFAULT_WORDS['sight.scale.increases'];
  const way = says === 'down' ? 1 : -1;
  const wrong = unknown ? way * slope(far) <= 0 : steps.every((step) => way * step < 0);
  return wrong ? [runsTheOtherWay(says, scale.increases === undefined)] : [];
}

/** Of the straight line through the readings, up to a positive factor. */
function slope(points: readonly Read[]): number {
  const middle = points.reduce((sum, { range }) => sum + range, 0) / points.length;
  return points.reduce((sum, { range, reading }) => sum + (range - middle) * reading, 0);
}

const EQUAL: Fault = {
  path: ['marks'],
  at: 'key',
  reason: 'marks at different ranges have the same reading, so they cannot measure the travel for one unit',
  allowed: 'readings that differ from range to range while travel_per_unit is unknown',
  write: 'Write what the scale read at each range, or write the travel_per_unit',
};

function runsTheOtherWay(says: 'down' | 'up', unsaid: boolean): Fault {
  const other = says === 'down' ? 'up' : 'down';
  const run = says === 'down' ? 'fall' : 'grow';
  const assumed = unsaid ? '; without this key they are assumed to grow' : '';
  return {
    path: ['sight', 'scale', 'increases'],
    at: unsaid ? 'missing' : 'value',
    reason: `the readings of the marks ${run} towards longer ranges, although the pin goes down for them${assumed}`,
    allowed: 'down when the numbers grow as the pin goes down, up when they grow as it goes up',
    write: `${unsaid ? 'Add' : 'Write'} "increases: ${other}", or correct the readings`,
  };
}
