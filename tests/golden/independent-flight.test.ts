import { describe, expect, it } from 'vitest';
import { cell, referenceTable, tableAt } from '../reference/table.ts';
import { type Difference, differences } from './independent-flight/differences.ts';
import { shots } from './independent-flight/shots.ts';

/** Fine enough that what is left is a difference of the equations. */
const FINE = 1e-12;

const by = (flights: readonly Difference[]) => new Map(flights.map((flight) => [flight.name, flight]));
const [fine, everyday] = [by(differences(FINE)), by(differences())];

it('covers slow and fast bows, steep slopes both ways, and winds from eight sides', () => {
  const degrees = (radians: number): number => Math.round((radians * 180) / Math.PI);
  const speeds = shots.map(({ launch }) => Math.round(Math.hypot(...launch.velocity)));
  const slopes = shots.map(({ conditions }) => degrees(conditions.slope));
  const bearings = shots.map(({ conditions: { wind } }) => degrees(Math.atan2(wind.across, wind.tail)));
  expect([Math.min(...speeds), Math.max(...speeds)]).toEqual([43, 107]);
  expect([Math.min(...slopes), Math.max(...slopes)]).toEqual([-40, 40]);
  expect(new Set(bearings.map((bearing) => (bearing + 360) % 360)).size).toBe(8);
});

describe.each([...fine.keys()])('%s', (name) => {
  it('is the same flight to 10 nm, solved finely: the same equations, written twice', () => {
    const { place, time, velocity, spin } = fine.get(name) ?? expect.fail();
    // Both solvers keep 1e-12 a step over some hundred steps; the smallest term of the model, left out, moves the arrow by 1e-6 m
    // or more.
    expect(place).toBeLessThan(1e-8 /* m */);
    expect(time).toBeLessThan(1e-8 /* m flown in it */);
    expect(velocity).toBeLessThan(1e-7 /* m/s */);
    expect(spin).toBeLessThan(1e-8 /* relative */);
  });

  it('is the same to 1 um as flown every day', () => {
    const { place, time, velocity, spin } = everyday.get(name) ?? expect.fail();
    // A tenth of the 1e-5 m that a tape can show at any range. Most flights are a thousand times better; the worst two step
    // across the corners of a measured drag table, where its second derivative jumps and no step size pays.
    expect(place).toBeLessThan(1e-6 /* m */);
    expect(time).toBeLessThan(1e-5 /* m flown in it: 2e-7 s */);
    expect(velocity).toBeLessThan(2e-5 /* m/s */);
    // A thousandth of the smallest drift.
    expect(spin).toBeLessThan(1e-3 /* relative */);
  });
});

it('the solver gives the printed level trajectories to their last digit', () => {
  const columns = ['case', 'x_m', 'time_s', 'drop_m', 'speed_mps'];
  const solved = tableAt('tests/golden/independent-flight/level.csv', columns);
  const printed = referenceTable('computed-trajectories', 'trajectories.csv', columns);
  expect(solved.length).toBe(printed.length);
  for (const [i, row] of printed.entries())
    for (const column of ['time_s', 'drop_m', 'speed_mps']) {
      const [theirs, found] = [cell(row, column), cell(solved[i] ?? {}, column)];
      expect(cell(solved[i] ?? {}, 'case').text).toBe(cell(row, 'case').text);
      expect(Math.abs(found.value - theirs.value)).toBeLessThanOrEqual(theirs.half);
    }
});
