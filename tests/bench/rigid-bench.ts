import { spawnSync } from 'node:child_process';
import { Worker } from 'node:worker_threads';
import { Solver } from 'odex';
import { STATE, STATE_SIZE } from '../../src/flight/frame.ts';
import { launchFromEye, launchState } from '../../src/flight/launch.ts';
import { RIGID_STATE_SIZE } from '../../src/flight/rigid-frame.ts';
import { CLEAN, rigidLaunch, rigidLaunchState } from '../../src/flight/rigid-launch.ts';
import { rigidMotion } from '../../src/flight/rigid-motion.ts';
import { rigidFlyer } from '../../src/flight/rigid-trajectory.ts';
import { flyer } from '../../src/flight/trajectory.ts';
import { createIntegrator, type Derivative } from '../../src/numerics/ode.ts';
import { si } from '../../src/quantities/quantity.ts';
import { huntingArrow } from '../unit/flight/hunting-arrow.ts';
import { conditionsOf } from '../unit/flight/point-arrow.ts';
import { HAND_WRITTEN_SIZE, handWritten } from './hand-written-arrow.ts';
import { RANGE } from './rigid-shots.ts';
import { rungeKutta } from './runge-kutta.ts';
import { interleaved } from './timing.ts';

const conditions = conditionsOf(huntingArrow().flying);
const launch = launchFromEye(si(85.344), si(0));
/** 30 mrad off, as the target's own measurement. */
const tilted = rigidLaunch(launch, { ...CLEAN, tailLeft: si(0.03) });
const SHOTS = 10_000;
const THREADS = 2;
const REPEATS = 60;

const position = (y: readonly number[] | undefined): readonly [number, number] => [
  y?.[STATE.height] ?? Number.NaN,
  y?.[STATE.lateral] ?? Number.NaN,
];
const apart = (a: readonly number[] | undefined, b: readonly number[] | undefined): number =>
  Math.hypot(position(a)[0] - position(b)[0], position(a)[1] - position(b)[1]);

/** Equations for a state of fixed length, for a method that makes its own states of that length. */
const ofAnyState = <State extends readonly number[]>(derivative: Derivative<State>): Derivative =>
  derivative as Derivative;

/** The fewest equal steps, up by a tenth, whose error at the end is no larger. */
function stepsFor(
  derivative: Derivative,
  start: readonly number[],
  exact: readonly number[],
  error: number,
): number {
  let steps = 6;
  while (!(apart(rungeKutta(derivative, start, 0, RANGE, steps), exact) <= error))
    steps = Math.ceil(1.1 * steps);
  return steps;
}

function bareOdex(): () => void {
  const solver = new Solver(handWritten, HAND_WRITTEN_SIZE, {
    rawFunction: true,
    denseOutput: false,
    relativeTolerance: 1e-6,
    absoluteTolerance: 1e-6,
    initialStepSize: 0.01,
    maxSteps: 1e5,
  });
  const { velocity, axis } = tilted;
  const start = [0, 0, 0, ...velocity, ...axis, 0, 0, 0, 0];
  /** The flight's time, so that both go the same way. */
  const end = rigidFlyer(conditions).states(tilted, [RANGE])[0]?.[STATE.time] ?? Number.NaN;
  return () => {
    solver.solve(0, start, end);
  };
}

const exactEnd = (derivative: Derivative, size: number, start: readonly number[]): readonly number[] =>
  createIntegrator(derivative, size, {
    relativeTolerance: 1e-12,
    absoluteTolerance: 1e-12,
    initialStep: 1,
  }).advance(0, start, RANGE);

/** The rigid model beside the everyday one, both beside equal steps at equal error, with the targets. */
export async function rigidLines(): Promise<readonly string[]> {
  const everyday = flyer(conditions);
  const rigid = rigidFlyer(conditions);
  const linear = rigidFlyer(conditions, { crossFlow: 0 });
  const pointStart = launchState(launch);
  const rigidStart = rigidLaunchState(tilted, false);
  const pointDerivative = ofAnyState(everyday.derivative);
  const rigidDerivative = ofAnyState(rigidMotion(conditions));
  const [exactPoint, exactRigid] = [
    exactEnd(pointDerivative, STATE_SIZE, pointStart),
    exactEnd(rigidDerivative, RIGID_STATE_SIZE, rigidStart),
  ];
  const [pointError, rigidError] = [
    apart(everyday.states(launch, [RANGE])[0], exactPoint),
    apart(rigid.states(tilted, [RANGE])[0], exactRigid),
  ];
  const [pointSteps, rigidSteps] = [
    stepsFor(pointDerivative, pointStart, exactPoint, pointError),
    stepsFor(rigidDerivative, rigidStart, exactRigid, rigidError),
  ];
  const times = interleaved(
    [
      () => everyday.states(launch, [RANGE]),
      () => rigid.states(tilted, [RANGE]),
      () => linear.states(tilted, [RANGE]),
      bareOdex(),
      () => rungeKutta(pointDerivative, pointStart, 0, RANGE, pointSteps),
      () => rungeKutta(rigidDerivative, rigidStart, 0, RANGE, rigidSteps),
    ],
    REPEATS,
  ).map(({ median }) => 1000 * median);
  const [point = 0, full = 0, plain = 0, bare = 0, pointEqual = 0, fullEqual = 0] = times;
  const used = (flight: { evaluations: () => number }, fly: () => void): number => {
    const before = flight.evaluations();
    fly();
    return flight.evaluations() - before;
  };
  const equalSteps = (ratio: number, steps: number): string =>
    `${ratio.toFixed(1)} times ${steps} equal Runge-Kutta steps of the same error`;
  const seconds = await twoThreads();
  return [
    `everyday shot to 100 yd, 1e-8: ${point.toFixed(1)} us, ` +
      `${used(everyday, () => everyday.states(launch, [RANGE]))} evaluations, ` +
      `error ${millimetres(pointError)}; ${equalSteps(point / pointEqual, pointSteps)}`,
    `rigid shot to 100 yd, 30 mrad off, 1e-6: ${full.toFixed(1)} us, ` +
      `${used(rigid, () => rigid.states(tilted, [RANGE]))} evaluations, ` +
      `error ${millimetres(rigidError)}; ${equalSteps(full / fullEqual, rigidSteps)}`,
    `rigid shot against bare odex on hand-written linear equations: ${(full / bare).toFixed(2)} times with cross-flow, ` +
      `${(plain / bare).toFixed(2)} times without (target 1.3; bare ${bare.toFixed(1)} us)`,
    `${SHOTS} rigid shots on ${THREADS} threads, warm: ${seconds.toFixed(2)} s (target 1), ` +
      `${((1e6 * seconds * THREADS) / SHOTS).toFixed(0)} us a shot and thread`,
  ];
}

const millimetres = (metres: number): string => `${(1000 * metres).toExponential(0)} mm`;

/** Wall time of the shots, shared out among threads that have flown once before. */
async function twoThreads(): Promise<number> {
  const file = 'dist/bench/rigid-worker.mjs';
  const bundle = [
    'tests/bench/rigid-worker.ts',
    '--bundle',
    '--platform=node',
    '--format=esm',
    `--outfile=${file}`,
  ];
  const built = spawnSync('node_modules/.bin/esbuild', [...bundle, '--log-level=error', BANNER], {
    stdio: 'inherit',
  });
  if (built.status !== 0) throw new Error('the threads could not be bundled');
  const workers = Array.from({ length: THREADS }, () => new Worker(`./${file}`));
  const run = (shots: number): Promise<unknown> =>
    Promise.all(
      workers.map(
        (worker, i) =>
          new Promise((resolve, reject) => {
            worker.once('message', resolve);
            worker.once('error', reject);
            worker.postMessage([(i * shots) / THREADS, ((i + 1) * shots) / THREADS]);
          }),
      ),
    );
  await run(SHOTS / 20);
  const start = performance.now();
  await run(SHOTS);
  const seconds = (performance.now() - start) / 1000;
  await Promise.all(workers.map((worker) => worker.terminate()));
  return seconds;
}

/** As package.json bundles everything: what odex asks for by `require` must be found. */
const BANNER =
  '--banner:js=import{createRequire as nodeRequire}from"node:module";const require=nodeRequire(import.meta.url);';
