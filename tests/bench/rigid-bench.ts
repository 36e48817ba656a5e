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
import { at } from '../../src/numerics/at.ts';
import { createIntegrator, type Derivative } from '../../src/numerics/ode.ts';
import { si } from '../../src/quantities/quantity.ts';
import { huntingArrow } from '../unit/flight/hunting-arrow.ts';
import { conditionsOf } from '../unit/flight/point-arrow.ts';
import type { Figure } from './figure.ts';
import { HAND_WRITTEN_SIZE, handWritten } from './hand-written-arrow.ts';
import { RANGE } from './rigid-shots.ts';
import { rungeKutta } from './runge-kutta.ts';
import { interleaved, processorTime, type Timed } from './timing.ts';

const conditions = conditionsOf(huntingArrow().flying);
const launch = launchFromEye(si(85.344), si(0));
/** 30 mrad off, as the target's own measurement. */
const tilted = rigidLaunch(launch, { ...CLEAN, tailLeft: si(0.03) });
const SHOTS = 10_000;
const THREADS = 2;

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
    maxStepSize: 0,
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

/** The rigid model beside the everyday one, both beside equal steps at equal error. */
export async function rigidFigures(): Promise<readonly Figure[]> {
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
  const against = interleaved([
    bareOdex(),
    () => rigid.states(tilted, [RANGE]),
    () => linear.states(tilted, [RANGE]),
  ]);
  const [bare, full, plain] = [at(against, 0), at(against, 1), at(against, 2)];
  const equalPoint = interleaved([
    () => rungeKutta(pointDerivative, pointStart, 0, RANGE, pointSteps),
    () => everyday.states(launch, [RANGE]),
  ]);
  const equalRigid = interleaved([
    () => rungeKutta(rigidDerivative, rigidStart, 0, RANGE, rigidSteps),
    () => rigid.states(tilted, [RANGE]),
  ]);
  const used = (flight: { evaluations: () => number }, fly: () => void): string => {
    const before = flight.evaluations();
    fly();
    return `${flight.evaluations() - before} evaluations`;
  };
  const threads = await twoThreads();
  return [
    {
      name: 'everyday shot to 100 yd, 1e-8',
      ratio: at(equalPoint, 1).ratio,
      of: 'equal Runge-Kutta steps of the same error',
      more:
        `${pointSteps} of them; error ${millimetres(pointError)}, ` +
        used(everyday, () => everyday.states(launch, [RANGE])),
    },
    {
      name: 'rigid shot to 100 yd, 30 mrad off',
      ratio: at(equalRigid, 1).ratio,
      of: 'equal Runge-Kutta steps of the same error',
      more:
        `${rigidSteps} of them; error ${millimetres(rigidError)}, ` +
        used(rigid, () => rigid.states(tilted, [RANGE])),
    },
    {
      name: 'rigid shot with cross-flow',
      ratio: full.ratio,
      of: 'bare odex on hand-written linear equations',
      target: 1,
      more: `${microseconds(full)}, bare ${microseconds(bare)}`,
    },
    { name: 'rigid shot without', ratio: plain.ratio, of: 'the same', target: 1 },
    {
      name: "a rigid shot's allocations",
      ratio: full.bytes / bare.bytes,
      of: "bare odex's",
      more: `${full.bytes.toFixed(0)} bytes a shot`,
    },
    {
      name: `${SHOTS} rigid shots on ${THREADS} threads`,
      ratio: threads.processor / SHOTS / full.time,
      of: 'as many shots one by one, in processor time',
      more: `${threads.seconds.toFixed(2)} s (target 1 s)`,
    },
  ];
}

const microseconds = ({ time }: Timed): string => `${(1000 * time).toFixed(1)} us`;
const millimetres = (metres: number): string => `${(1000 * metres).toExponential(0)} mm`;

/** Wall time (s) and processor time (ms) of the shots, shared out among threads that have flown once before. */
async function twoThreads(): Promise<{ readonly seconds: number; readonly processor: number }> {
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
  const start = { wall: performance.now(), processor: processorTime() };
  await run(SHOTS);
  const seconds = (performance.now() - start.wall) / 1000;
  const processor = processorTime() - start.processor;
  await Promise.all(workers.map((worker) => worker.terminate()));
  return { seconds, processor };
}

/** As package.json bundles everything: what odex asks for by `require` must be found. */
const BANNER =
  '--banner:js=import{createRequire as nodeRequire}from"node:module";const require=nodeRequire(import.meta.url);';
