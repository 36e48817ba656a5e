import { type FlightState, namedState } from '../../../src/flight/frame.ts';
import { flyer } from '../../../src/flight/trajectory.ts';
import { cell } from '../../reference/table.ts';
import { file, shots } from './shots.ts';

const flights = file('flights.csv', [
  'case',
  'range_m',
  'time_s',
  'height_m',
  'lateral_m',
  'along_mps',
  'up_mps',
  'right_mps',
  'spin_radps',
]);

/** Largest differences of one flight from the independent one, over the ranges where it was read. */
export interface Difference {
  readonly name: string;
  /** Of place at a range, m. */
  readonly place: number;
  /** Of time, as the way flown in it, m. */
  readonly time: number;
  /** Of velocity, m/s. */
  readonly velocity: number;
  /** Of spin, as a share of the spin. */
  readonly spin: number;
}

/** Each case of the independent solver flown by ours, with a tolerance (SI units, per step) or as every day. */
export const differences = (tolerance?: number): readonly Difference[] =>
  shots.map(({ name, conditions, launch }) => {
    const rows = flights.filter((read) => cell(read, 'case').text === name);
    if (rows.length < 3) throw new Error(`${name}: read at ${rows.length} ranges`);
    const ranges = rows.map((read) => cell(read, 'range_m').value);
    const flown = flyer(conditions, tolerance)
      .states(launch, ranges)
      .map((state, i) => namedState(ranges[i] ?? Number.NaN, state));
    const worst = (of: (state: FlightState, theirs: (column: string) => number) => number): number =>
      Math.max(
        ...flown.map((state, i) =>
          of(state, (column) => (rows[i] === undefined ? Number.NaN : cell(rows[i], column).value)),
        ),
      );
    return {
      name,
      place: worst((state, theirs) =>
        Math.hypot(state.height - theirs('height_m'), state.lateral - theirs('lateral_m')),
      ),
      time: worst((state, theirs) => Math.abs(state.time - theirs('time_s')) * theirs('along_mps')),
      velocity: worst(({ velocity: [x, y, z] }, theirs) =>
        Math.hypot(x - theirs('along_mps'), y - theirs('up_mps'), z - theirs('right_mps')),
      ),
      spin: worst(({ spin }, theirs) => Math.abs(spin / theirs('spin_radps') - 1)),
    };
  });
