import { Solver } from 'odex';
import { calibrate } from '../../src/calibration/fit.ts';
import { markUncertainty } from '../../src/calibration/mark-uncertainty.ts';
import { driftingMotion } from '../../src/flight/drifting.ts';
import { launchFromEye, launchState } from '../../src/flight/launch.ts';
import { flyer } from '../../src/flight/trajectory.ts';
import { at } from '../../src/numerics/at.ts';
import { si } from '../../src/quantities/quantity.ts';
import { marksFor } from '../../src/sight/marks.ts';
import { problem, shotMarks } from '../unit/calibration/invented-problem.ts';
import { conditionsOf, spinningArrow } from '../unit/flight/point-arrow.ts';
import { inventedRig, yards } from '../unit/sight/invented-rig.ts';
import type { Figure } from './figure.ts';
import { interleaved, type Timed } from './timing.ts';

const conditions = conditionsOf(spinningArrow);
const rig = { ...inventedRig, conditions };
const launch = launchFromEye(si(85.344), si(0.02));
const stops = Array.from({ length: 18 }, (_, i) => ((i + 1) * 91.44) / 18);
const everyYard = Array.from({ length: 91 }, (_, i) => yards(10 + i));

/** Bare odex on our own derivative, all components held alike: what the flights of this tool are measured against. */
function bareOdex(): () => void {
  const solver = new Solver(driftingMotion(conditions), 7, {
    rawFunction: true,
    denseOutput: false,
    relativeTolerance: 1e-8,
    absoluteTolerance: 1e-8,
    initialStepSize: 8,
    maxStepSize: 0,
    maxSteps: 1e5,
  });
  return () => {
    let x = 0;
    let y = launchState(launch);
    for (const stop of stops) {
      y = solver.solve(x, y, stop).y;
      x = stop;
    }
  };
}

/** The everyday model's costs. */
export function flightFigures(): readonly Figure[] {
  const flight = flyer(conditions, 1e-8);
  const found = calibrate(problem(shotMarks([20, 30, 40, 50, 60, 80], 0.0005)));
  const timed = interleaved([
    bareOdex(),
    () => flight.states(launch, stops),
    () => marksFor(rig, everyYard),
    () => markUncertainty(found, marksFor(found.rig, everyYard)),
    () => calibrate(found.problem),
  ]);
  const bare = at(timed, 0);
  const ours = at(timed, 1);
  const [marks, sure, fit] = [at(timed, 2), at(timed, 3), at(timed, 4)];
  const of = 'a bare flight';
  return [
    {
      name: 'everyday flight of 18 stops to 100 yd, 1e-8',
      ratio: ours.ratio,
      of: 'bare odex',
      target: 0.6,
      more: `${microseconds(ours)}, bare ${microseconds(bare)}`,
    },
    {
      name: 'its allocations',
      ratio: ours.bytes / bare.bytes,
      of: "bare odex's",
      more: `${ours.bytes.toFixed(0)} bytes a flight`,
    },
    { name: '91 marks', ratio: marks.ratio, of, more: `${milliseconds(marks)} (target 2 ms)` },
    {
      name: '91 marks with their uncertainties',
      ratio: sure.ratio,
      of,
      more: `${milliseconds(sure)} (target 10 ms)`,
    },
    {
      name: 'fit of six marks and five unknowns, each iteration',
      ratio: fit.ratio / found.iterations,
      of,
      target: 10,
      more: `${found.iterations} iterations in ${milliseconds(fit)} (target 15 ms), ${(fit.bytes / 1e6).toFixed(1)} MB`,
    },
  ];
}

const microseconds = ({ time }: Timed): string => `${(1000 * time).toFixed(1)} us`;
const milliseconds = ({ time }: Timed): string => `${time.toFixed(2)} ms`;
