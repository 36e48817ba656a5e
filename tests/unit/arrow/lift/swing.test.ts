import { describe, expect, it } from 'vitest';
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

it("a damped one swings more slowly and dies away: 2 a'' + 4 a' + 20 a = 0 has the roots -1 +- 3i", () => {
  const { natural, dampingRatio, damped, decay } = oscillation(20, 4, 2);
  expect(Math.abs(damped - 3)).toBeLessThan(1e-15 /* rounding */);
  expect(decay).toBe(1);
  expect(Math.abs(natural - Math.sqrt(10))).toBeLessThan(1e-15 /* rounding */);
  expect(Math.abs(dampingRatio - 1 / Math.sqrt(10))).toBeLessThan(1e-15 /* rounding */);
});

it('an overdamped one does not swing through', () => expect(oscillation(1, 4, 1).damped).toBe(0));

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

describe('swing by hand', () => {
  /** 1 m across in air of 8/pi kg/m3, so that P = 1; 10 kg and 2 kg m2. */
  const swung = (CN: number, M1: number, M2: number, CD: number) =>
    swing(
      {
        ...flying,
        mass: si(10),
        diameter: si(1),
        attitude: {
          ...(flying.attitude ?? expect.fail('no attitude')),
          transverseInertia: si(2),
          normalSlope: CN,
          firstMoment: si(M1),
          secondMoment: si(M2),
        },
      },
      8 / Math.PI,
      CD,
    );

  it('is that of the roots of its two equations', () => {
    // CN 4, CD 1, M1 -2, M2 3: a' = -0.3 a + 0.8 w, w' = -a - 1.4 w. Half the trace -0.85, determinant 0.42 + 0.8 = 1.22, so
    // the roots are -0.85 +- i sqrt(1.22 - 0.7225).
    const { wavelength, dampingLength } = swung(4, -2, 3, 1) ?? expect.fail('no swing');
    expect(Math.abs(wavelength - (2 * Math.PI) / Math.sqrt(0.4975))).toBeLessThan(1e-12 /* m, rounding */);
    expect(Math.abs(dampingLength - 1 / 0.85)).toBeLessThan(1e-12 /* m, rounding */);
  });

  it('is none when it creeps back, stands still, runs off, or grows', () => {
    // M2 9: a' = -0.3 a + 0.8 w, w' = -a - 4.4 w: 2.35^2 is above 2.12.
    expect(swung(4, -2, 9, 1)).toBeNull();
    // M1 0: a' = -0.3 a + w, w' = -1.4 w: real roots.
    expect(swung(4, 0, 3, 1)).toBeNull();
    // M1 2: a' = -0.3 a + 1.2 w, w' = a - 1.4 w: the determinant is below 0.
    expect(swung(4, 2, 3, 1)).toBeNull();
    // CD 5, M2 0: a' = 0.1 a + 0.8 w, w' = -a + 0.5 w: it swings, and grows.
    expect(swung(4, -2, 0, 5)).toBeNull();
    // CN 2, CD 1, M2 0: a' = -0.1 a + 0.8 w, w' = -a + 0.1 w: it swings for ever.
    expect(swung(2, -2, 0, 1)).toBeNull();
  });
});

it('a bare shaft does not swing back, and a point has nothing to swing', () => {
  const bare = buildArrow({ parts: { ...ridgeCampParts, vanes: undefined } });
  expect(swing(bare.flying, 1.225, 1.5)).toBeNull();
  const point = buildArrow({ totals: { mass: si(0.029), diameter: si(0.006) } });
  expect(swing(point.flying, 1.225, 2.5)).toBeNull();
});
