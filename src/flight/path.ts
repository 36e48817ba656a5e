import { at, floatAt } from '../numerics/at.ts';
import { quinticHermite } from '../numerics/interpolate.ts';
import type { Entry } from './entry.ts';
import { type FlightVector, STATE, STATE_SIZE } from './frame.ts';
import type { Launch } from './launch.ts';
import { launchState } from './launch.ts';
import type { Flyer } from './trajectory.ts';

/**
 * Spacing of the flown stations, m. Between them the path is read from a fifth-degree polynomial through heights, slopes
 * and curvatures; its error is (h/2)⁶/720 of the sixth derivative: below 1e-9 m of height, and below 1e-6 m of the sideways
 * drift that the first yards of spin-up bend most.
 */
const STATION_SPACING = 10;
/** Value, slope and curvature of one coordinate at one station. */
const PER_STATION = 3;

/** Height and lateral position of one flown arrow, readable at any range between start and end. */
export interface Path {
  readonly start: number;
  readonly end: number;
  readonly height: (range: number) => number;
  readonly lateral: (range: number) => number;
  readonly samples: Samples;
}

/** What a path is read from. */
interface Samples {
  /** For every station PER_STATION numbers, m, 1 and 1/m. */
  readonly height: Float64Array;
  readonly lateral: Float64Array;
  /** What the entry into the wind adds, m; null when nothing does. */
  readonly offset: Entry['offset'] | null;
}

/** Fly to `end` once and keep the path from `start` on: the launch itself, or a range beyond it. */
export function flyPath(
  { states, derivative, entry }: Flyer,
  launch: Launch,
  end: number,
  start: number = launch.position[0],
): Path {
  const intervals = intervalsOf(start, end);
  const spacing = (end - start) / intervals;
  const ranges = Array.from({ length: intervals }, (_, i) =>
    i === intervals - 1 ? end : start + (i + 1) * spacing,
  );
  const flown =
    start > launch.position[0]
      ? states(launch, [start, ...ranges])
      : [launchState(launch), ...states(launch, ranges)];
  const height = new Float64Array(PER_STATION * flown.length);
  const lateral = new Float64Array(PER_STATION * flown.length);
  const slope = new Array<number>(STATE_SIZE).fill(0);
  for (const [i, y] of flown.entries()) {
    derivative(start + i * spacing, y, slope);
    sample(height, i, y, slope, STATE.height, STATE.vy);
    sample(lateral, i, y, slope, STATE.lateral, STATE.vz);
  }
  const into = entry(launch);
  return pathThrough(start, end, { height, lateral, offset: into === null ? null : into.offset });
}

/** The path whose every sample is Σ shares × samples: paths must have the same start and end. */
export function blendedPath(paths: readonly Path[], shares: readonly number[]): Path {
  const [first] = paths;
  if (first === undefined) throw new RangeError('no path to blend');
  const blend = (of: (path: Path) => Float64Array): Float64Array => {
    const sum = new Float64Array(of(first).length);
    for (const [k, path] of paths.entries()) {
      const share = at(shares, k);
      const values = of(path);
      for (let i = 0; i < sum.length; i += 1) sum[i] = floatAt(sum, i) + share * floatAt(values, i);
    }
    return sum;
  };
  const offsets = paths.flatMap(({ samples: { offset } }, k) =>
    offset === null ? [] : [{ offset, share: at(shares, k) }],
  );
  return pathThrough(first.start, first.end, {
    height: blend(({ samples }) => samples.height),
    lateral: blend(({ samples }) => samples.lateral),
    offset:
      offsets.length === 0
        ? null
        : (range) =>
            offsets.reduce<readonly [number, number]>(
              ([up, right], { offset, share }) => {
                const [ownUp, ownRight] = offset(range);
                return [up + share * ownUp, right + share * ownRight];
              },
              [0, 0],
            ),
  });
}

const intervalsOf = (start: number, end: number): number =>
  Math.max(1, Math.ceil((end - start) / STATION_SPACING));

/** A coordinate's value, slope and curvature: y″ = (dv/dx − y′ dvₓ/dx)/vₓ. */
function sample(
  into: Float64Array,
  i: number,
  y: FlightVector,
  slope: readonly number[],
  position: typeof STATE.height | typeof STATE.lateral,
  velocity: typeof STATE.vy | typeof STATE.vz,
): void {
  const rise = at(slope, position);
  into[PER_STATION * i] = y[position];
  into[PER_STATION * i + 1] = rise;
  into[PER_STATION * i + 2] = (at(slope, velocity) - rise * at(slope, STATE.vx)) / y[STATE.vx];
}

function pathThrough(start: number, end: number, samples: Samples): Path {
  const { offset } = samples;
  const intervals = intervalsOf(start, end);
  const spacing = (end - start) / intervals;
  const reader =
    (values: Float64Array) =>
    (range: number): number => {
      const place = (range - start) / spacing;
      const i = Math.min(Math.max(Math.floor(place), 0), intervals - 1);
      const k = PER_STATION * i;
      return quinticHermite(
        spacing,
        place - i,
        floatAt(values, k),
        floatAt(values, k + 1),
        floatAt(values, k + 2),
        floatAt(values, k + 3),
        floatAt(values, k + 4),
        floatAt(values, k + 5),
      );
    };
  const [height, lateral] = [reader(samples.height), reader(samples.lateral)];
  return {
    start,
    end,
    height: offset === null ? height : (range) => height(range) + offset(range)[0],
    lateral: offset === null ? lateral : (range) => lateral(range) + offset(range)[1],
    samples,
  };
}
