import { Solver } from 'odex';
import { calibrate } from '../../src/calibration/fit.ts';
import { markUncertainty } from '../../src/calibration/mark-uncertainty.ts';
import { driftingMotion } from '../../src/flight/drifting.ts';
import { launchFromEye, launchState } from '../../src/flight/launch.ts';
import { flyer } from '../../src/flight/trajectory.ts';
import { si } from '../../src/quantities/quantity.ts';
import { marksFor } from '../../src/sight/marks.ts';
import { problem, shotMarks } from '../unit/calibration/invented-problem.ts';
import { conditionsOf, spinningArrow } from '../unit/flight/point-arrow.ts';
import { inventedRig, yards } from '../unit/sight/invented-rig.ts';
import { interleaved } from './timing.ts';

const conditions = conditionsOf(spinningArrow);
const rig = { ...inventedRig, conditions };
const launch = launchFromEye(si(85.344), si(0.02));
const stops = Array.from({ length: 18 }, (_, i) => ((i + 1) * 91.44) / 18);
const everyYard = Array.from({ length: 91 }, (_, i) => yards(10 + i));
const { microseconds, milliseconds } = {
  microseconds: (ms: number) => (1000 * ms).toFixed(1),
  milliseconds: (ms: number) => ms.toFixed(2),
};

/** Bare odex on our own derivative: what the wrapper, the stops and the named states add is the rest. */
function bareOdex(): () => void {
  const solver = new Solver(driftingMotion(conditions), 7, {
    rawFunction: true,
    denseOutput: false,
    relativeTolerance: 1e-8,
    absoluteTolerance: 1e-8,
    initialStepSize: 8,
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

/** The everyday model's costs, with their targets. */
export function flightLines(): readonly string[] {
  const flight = flyer(conditions, 1e-8);
  const [ours, bare] = interleaved([() => flight.states(launch, stops), bareOdex()], 200);
  const found = calibrate(problem(shotMarks([20, 30, 40, 50, 60, 80], 0.0005)));
  const [marks, sure, fit] = interleaved(
    [
      () => marksFor(rig, everyYard),
      () => {
        markUncertainty(found, marksFor(found.rig, everyYard));
      },
      () => calibrate(found.problem),
    ],
    10,
  );
  const at = (timed: typeof ours): number => timed?.median ?? Number.NaN;
  const flights = (timed: typeof ours): string => `${(at(timed) / at(bare)).toFixed(0)} bare flights`;
  return [
    `one everyday flight to 100 yd, 18 stops, 1e-8: ${microseconds(at(ours))} us; ` +
      `${(at(ours) / at(bare)).toFixed(2)} times bare odex (target 0.6)`,
    `91 marks, warm: ${milliseconds(at(marks))} ms (target 2), ${flights(marks)}`,
    `91 marks with their uncertainties, warm: ${milliseconds(at(sure))} ms (target 10), ${flights(sure)}`,
    `fit of six marks and five unknowns, warm: ${milliseconds(at(fit))} ms (target 15), ${flights(fit)}`,
  ];
}
