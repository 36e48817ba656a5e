import { createIntegrator, type Derivative } from '../../../src/numerics/ode.ts';
import type { Case, Claim } from '../claim.ts';

const g = 9.80665;
const tolerance = 1e-8;
/** The solver takes a handful of steps over a fall and keeps each well inside its tolerance, so one tolerance bounds them all. */
const allowed = tolerance;

const solution = (derivative: Derivative, start: readonly number[], to: number): readonly number[] =>
  createIntegrator(derivative, start.length, {
    relativeTolerance: tolerance,
    absoluteTolerance: tolerance,
    initialStep: 0.1,
  }).advance(0, start, to);

const cases = (name: string, found: readonly number[], exact: readonly number[]): readonly Case[] =>
  exact.map((value, i) => ({
    name: `${name}, component ${i}`,
    error: Math.abs((found[i] ?? Number.NaN) - value) / Math.max(1, Math.abs(value)),
    allowed,
  }));

/** From rest, y down: v' = g - g (v/V)^2 gives v = V tanh(g t/V), y = V^2/g ln cosh(g t/V). */
const quadratic = [0.5, 1, 3, 10].flatMap((t) => {
  const V = 42;
  const found = solution(
    (_, [, v = 0], dydx) => {
      dydx[0] = v;
      dydx[1] = g - g * (v / V) ** 2;
    },
    [0, 0],
    t,
  );
  return cases(`drag with the square of the speed, ${t} s`, found, [
    (V ** 2 / g) * Math.log(Math.cosh((g * t) / V)),
    V * Math.tanh((g * t) / V),
  ]);
});

/** v' = -k v - (0, g): the velocity decays to (0, -g/k). */
const linear = [0.5, 1, 3].flatMap((t) => {
  const [k, u, w] = [0.3, 80, 12];
  const found = solution(
    (_, [, , vx = 0, vy = 0], dydx) => {
      dydx[0] = vx;
      dydx[1] = vy;
      dydx[2] = -k * vx;
      dydx[3] = -k * vy - g;
    },
    [0, 0, u, w],
    t,
  );
  const decay = Math.exp(-k * t);
  return cases(`drag with the speed, ${t} s`, found, [
    (u * (1 - decay)) / k,
    ((w + g / k) * (1 - decay)) / k - (g * t) / k,
    u * decay,
    (w + g / k) * decay - g / k,
  ]);
});

/** With the distance x as the variable: y = x tan a - g x^2/(2 u^2), t = x/u. */
const vacuum = [20, 50, 91.44].flatMap((x) => {
  const [u, w] = [85 * Math.cos(0.03), 85 * Math.sin(0.03)];
  const found = solution(
    (_, [, vy = 0], dydx) => {
      dydx[0] = vy / u;
      dydx[1] = -g / u;
      dydx[2] = 1 / u;
    },
    [0, w, 0],
    x,
  );
  return cases(`no drag, ${x} m`, found, [(x * w) / u - (g * x ** 2) / (2 * u ** 2), w - (g * x) / u, x / u]);
});

const source = 'closed forms of the equations of motion, derived beside the cases';

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'The solver falls as the closed form says: drag with the square of the speed',
    source,
    unit: 'm or m/s, relative above 1',
    cases: quadratic,
    notCovered: 'drag coefficients that change with speed',
  },
  {
    kind: 'law',
    claim: 'The solver falls as the closed form says: drag in proportion to speed',
    source,
    unit: 'm or m/s, relative above 1',
    cases: linear,
    notCovered: 'wind',
  },
  {
    kind: 'law',
    claim: 'The solver flies the vacuum parabola, with distance as the variable',
    source,
    unit: 'm, m/s or s, relative above 1',
    cases: vacuum,
    notCovered: 'steep paths, where distance turns back',
  },
];
