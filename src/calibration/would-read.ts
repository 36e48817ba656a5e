import { flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import type { Metres } from '../quantities/quantity.ts';
import type { Rig } from '../sight/rig.ts';
import { pinAtZero, pinForHit } from '../sight/zero.ts';
import { type Calibration, estimateOf } from './fit.ts';
import {
  type Beside,
  besideOf,
  type ParameterValues,
  parameterIn,
  TRAVEL_SCALE,
  withParameters,
} from './parameters.ts';
import { predict, predictor } from './prediction.ts';
import { type SightMark, travelOf, withWritten, writtenOf, writtenPer } from './sight-mark.ts';

/** The place of the sight with which a group would have hit where it did, by a rig. */
export interface WouldRead {
  /** As `writtenOf`: a reading, or metres on the strip. */
  readonly written: number;
  /** By how much the hit is higher for one more of it, m. */
  readonly heightPer: number;
}

/** The hit is smooth in the pin: from half a millimetre on, so many straight steps leave less than a thousandth of it. */
const PIN_STEP = 5e-4;
const STEPS = 3;

/**
 * What would have to be written of a mark for its group to hit where it did, in the air, the arrow and the hold of its own day.
 *
 * @param range m, of the target; that of the mark, unless it stood elsewhere
 * @throws NumericalError when the arrow of the rig does not get to the range
 */
export function wouldReadBy(
  rig: Rig,
  beside: Beside,
  mark: SightMark,
  range: Metres = mark.range,
): WouldRead {
  const scale = rig.scale ?? TRAVEL_SCALE;
  const perTravel = writtenPer(scale, mark, beside.tapeRatio);
  const shot = { ...mark, range };
  const flight = flyer(rig.conditions);
  const zero = pinAtZero(rig, null, flight);
  const travel = pinForHit(rig, range, zero.windage, flight).down - zero.down;
  const predicted = predictor(rig, beside);
  let written = writtenOf(mark) + (travel - travelOf(scale, mark, beside.tapeRatio)) * perTravel;
  let heightPer = 0;
  const step = PIN_STEP * perTravel;
  for (let i = 0; i < STEPS; i++) {
    const here = predicted(withWritten(shot, written));
    heightPer = (predicted(withWritten(shot, written + step)) - here) / step;
    written += (mark.vertical - here) / heightPer;
  }
  return { written, heightPer };
}

/** The same by a calibrated rig. */
export const wouldRead = (calibration: Calibration, mark: SightMark, range: Metres = mark.range): WouldRead =>
  wouldReadBy(fittedRig(calibration), besideOf(calibration.values), mark, range);

/** By how much the hit of a mark is higher for one more of what is written of it, a number or a metre on the strip; m. */
export function heightPerWritten(calibration: Calibration, mark: SightMark): number {
  const [rig, beside] = [fittedRig(calibration), besideOf(calibration.values)];
  const step = PIN_STEP * writtenPer(rig.scale ?? TRAVEL_SCALE, mark, beside.tapeRatio);
  const predicted = predictor(rig, beside);
  return (predicted(withWritten(mark, writtenOf(mark) + step)) - predicted(mark)) / step;
}

/** A sight without a scale keeps what the fit found of its place, which its own rig does not. */
const fittedRig = ({ problem, values }: Calibration, changed: ParameterValues = values): Rig =>
  withParameters(problem.rig, changed);

/** Differences are taken over this share of the standard error: small against curvature, large against rounding. */
const STEP_SHARE = 0.02;

/** Standard uncertainty of the height that a calibration predicts for a mark, m: √(gᵀ C g), g by differences. */
export function predictedSd(calibration: Calibration, mark: SightMark): number {
  const { values, names, covariance } = calibration;
  const heightWith = (changed: ParameterValues): number =>
    at(predict(fittedRig(calibration, changed), [mark], besideOf(changed)), 0);
  const height = heightWith(values);
  const gradient = names.map((name) => {
    const step = STEP_SHARE * estimateOf(calibration, name).sd;
    return (heightWith({ ...values, [name]: parameterIn(values, name) + step }) - height) / step;
  });
  return Math.sqrt(quadraticForm(covariance, gradient));
}
