import { expect, it } from 'vitest';
import { buildArrow } from '../../../../src/arrow/build.ts';
import { oscillation, swing } from '../../../../src/arrow/lift/swing.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { ridgeCampParts } from '../ridge-camp-arrow.ts';

it('an undamped oscillator swings at sqrt(K/I)', () => {
  expect(oscillation(9, 0, 4)).toEqual({ natural: 1.5, dampingRatio: 0, damped: 1.5, decay: 0 });
});

it('a critically damped one does not swing through', () => {
  expect(oscillation(1, 2, 1)).toEqual({ natural: 1, dampingRatio: 1, damped: 0, decay: 1 });
});

const { flying } = buildArrow({ parts: ridgeCampParts, totals: { dragCoefficient: 2.5 } });

/**
 * The same arrow flown in a plane without gravity by its forces in time (Runge-Kutta, 0.05 ms): incidence against distance
 * flown, from a tail 0.01 rad aside. Nothing here knows of the reduction to distance.
 */
function flownIncidence(): readonly (readonly [distance: number, incidence: number])[] {
  const { attitude, mass, diameter } = flying;
  if (attitude === null) throw new Error('no attitude');
  const [rho, CD, section] = [1.225, 2.5, (Math.PI / 4) * diameter ** 2];
  const { normalSlope: CN, firstMoment: M1, secondMoment: M2, transverseInertia: I } = attitude;
  type State = readonly [distance: number, speed: number, path: number, attitude: number, rate: number];
  const derivative = ([, V, path, turned, rate]: State): State => {
    const [alpha, q] = [turned - path, 0.5 * rho * V * V * section];
    const lift = q * ((CN - CD) * alpha - (M1 * rate) / V);
    const moment = q * (M1 * alpha - (M2 * rate) / V);
    return [V, (-q * CD) / mass, lift / (mass * V), rate, moment / I];
  };
  const moved = (s: State, d: State, h: number): State => [
    s[0] + h * d[0],
    s[1] + h * d[1],
    s[2] + h * d[2],
    s[3] + h * d[3],
    s[4] + h * d[4],
  ];
  let state: State = [0, 85, 0, 0.01, 0];
  const path: (readonly [number, number])[] = [];
  const h = 5e-5;
  for (let i = 0; i < 30_000; i++) {
    path.push([state[0], state[3] - state[2]]);
    const a = derivative(state);
    const b = derivative(moved(state, a, h / 2));
    const c = derivative(moved(state, b, h / 2));
    const d = derivative(moved(state, c, h));
    state = moved(moved(moved(moved(state, a, h / 6), b, h / 3), c, h / 3), d, h / 6);
  }
  return path;
}

it('wavelength and damping are those of the arrow flown in time, to 0.5 %', () => {
  const path = flownIncidence();
  const crossings: number[] = [];
  const peaks: (readonly [number, number])[] = [];
  path.forEach(([x, alpha], i) => {
    const [x0, before] = path[i - 1] ?? [x, alpha];
    const [, after] = path[i + 1] ?? [x, alpha];
    if (before * alpha < 0) crossings.push(x0 + ((x - x0) * before) / (before - alpha));
    if (i > 0 && Math.abs(alpha) > Math.abs(before) && Math.abs(alpha) >= Math.abs(after))
      peaks.push([x, Math.abs(alpha)]);
  });
  const result = swing(flying, 1.225, 2.5);
  const [firstCrossing = 0, , thirdCrossing = 0] = crossings;
  expect(Math.abs((thirdCrossing - firstCrossing) / (result?.wavelength ?? 0) - 1)).toBeLessThan(
    0.005 /* relative */,
  );
  const [firstPeak, , thirdPeak] = peaks;
  if (firstPeak === undefined || thirdPeak === undefined) throw new Error('no peaks');
  const dampingLength = (thirdPeak[0] - firstPeak[0]) / Math.log(firstPeak[1] / thirdPeak[1]);
  expect(Math.abs(dampingLength / (result?.dampingLength ?? 0) - 1)).toBeLessThan(0.005 /* relative */);
});

it('a bare shaft does not swing back, and a point has nothing to swing', () => {
  const bare = buildArrow({ parts: { ...ridgeCampParts, vanes: undefined } });
  expect(swing(bare.flying, 1.225, 1.5)).toBeNull();
  const point = buildArrow({ totals: { mass: si(0.029), diameter: si(0.006) } });
  expect(swing(point.flying, 1.225, 2.5)).toBeNull();
});
