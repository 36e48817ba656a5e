import { quinticHermite } from '../numerics/interpolate.ts';
import { STATE, STATE_SIZE } from './frame.ts';
import type { Launch } from './launch.ts';
import { launchState } from './launch.ts';
import type { Flyer } from './trajectory.ts';

/**
 * Spacing of the flown stations, m. Between them the path is read from a fifth-degree polynomial through heights, slopes and
 * curvatures; its error is (h/2)⁶/720 of the sixth derivative: below 1e-9 m of height, and below 1e-6 m of the sideways drift that the
 * first yards of spin-up bend most.
 */
const STATION_SPACING = 10;

/** Height and lateral position of one flown arrow, readable at any range between launch and end. */
export interface Path {
  readonly start: number;
  readonly end: number;
  readonly height: (range: number) => number;
  readonly lateral: (range: number) => number;
}

/** Fly to `end` once and keep the path. */
export function flyPath({ states, derivative }: Flyer, launch: Launch, end: number): Path {
  const start = launch.position[0];
  const intervals = Math.max(1, Math.ceil((end - start) / STATION_SPACING));
  const spacing = (end - start) / intervals;
  const stations = Array.from({ length: intervals }, (_, i) =>
    i === intervals - 1 ? end : start + (i + 1) * spacing,
  );
  const flown = [launchState(launch), ...states(launch, stations)];
  const height = new Float64Array(3 * flown.length);
  const lateral = new Float64Array(3 * flown.length);
  const slope = new Array<number>(STATE_SIZE).fill(0);
  for (const [i, y] of flown.entries()) {
    derivative(start + i * spacing, y, slope);
    const perVx = 1 / (y[STATE.vx] ?? 0);
    const bend = (position: number, velocity: number): number =>
      ((slope[velocity] ?? 0) - (slope[position] ?? 0) * (slope[STATE.vx] ?? 0)) * perVx;
    height.set([y[STATE.height] ?? 0, slope[STATE.height] ?? 0, bend(STATE.height, STATE.vy)], 3 * i);
    lateral.set([y[STATE.lateral] ?? 0, slope[STATE.lateral] ?? 0, bend(STATE.lateral, STATE.vz)], 3 * i);
  }
  const read = (samples: Float64Array) => (range: number) => {
    const i = Math.min(Math.max(Math.floor((range - start) / spacing), 0), intervals - 1);
    const at = (k: number): number => samples[3 * i + k] ?? Number.NaN;
    return quinticHermite(spacing, (range - start) / spacing - i, at(0), at(1), at(2), at(3), at(4), at(5));
  };
  return { start, end, height: read(height), lateral: read(lateral) };
}
