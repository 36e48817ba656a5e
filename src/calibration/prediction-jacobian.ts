import { at } from '../numerics/at.ts';
import type { Rows } from '../numerics/linear-algebra.ts';
import type { PinPosition } from '../sight/geometry.ts';
import type { Rig } from '../sight/rig.ts';
import { impact, pinAtZero, whereZeroed } from '../sight/zero.ts';
import type { DaySetting } from './day-setting.ts';
import type { Measurement } from './measurement.ts';
import {
  type Beside,
  besideOf,
  FLOWN,
  namedValues,
  type ParameterName,
  TRAVEL_SCALE,
  withParameters,
} from './parameters.ts';
import { daily, type Flown, flownAlike, pinFor, predictOne, WINDAGE } from './prediction.ts';
import { isSightMark, travelOf } from './sight-mark.ts';

/** Change of the pin over which the rise of a hit is taken, m: exact to a millionth, as height is nearly straight in it. */
const PIN_STEP = 1e-6;
/** Change of a parameter, as a share of what changes it noticeably: flights in equal steps keep eight digits of its effect. */
const STEP = 1e-5;

/** The parameters that change how an arrow flies; the others only where the pin stands for a reading. */
const FLYING: readonly ParameterName[] = [...FLOWN, 'speed_per_degree'];

/** A rig with everything that its arrows need to be flown. */
interface Ready {
  readonly own: Flown;
  readonly beside: Beside;
  readonly on: (setting: DaySetting | undefined) => Flown;
  /** On the slope where the sight was zeroed. */
  readonly zeroed: Flown;
}

function readyFor(rig: Rig, list: readonly number[], names: readonly ParameterName[]): Ready {
  const values = namedValues(list, names);
  const beside = besideOf(values);
  const own = flownAlike(withParameters(rig, values));
  const zeroed = rig.zeroSlope === rig.conditions.slope ? own : flownAlike(whereZeroed(own.rig));
  return { own, beside, on: daily(own, beside.perDegree, flownAlike), zeroed };
}

/**
 * The derivatives of what `predict` says by the parameters, a row for each measurement, in its unit over the parameter's.
 *
 * The pin of the zero range, and that which a drop was aimed with, follow a change dp of a parameter as the hit there must not
 * move: dpin = −(∂h/∂p) dp / (∂h/∂pin). So nothing is solved but once, and each measurement costs one flight for itself, one
 * for the pin and one for each parameter that changes flights.
 *
 * @param list the values of `names`
 * @param typical changes of them that are noticeable
 * @throws NumericalError when an arrow does not get there
 * @checked unit: prediction-jacobian.test.ts, against differences of `predict`
 */
export function predictionJacobian(
  rig: Rig,
  list: readonly number[],
  names: readonly ParameterName[],
  typical: readonly number[],
  measurements: readonly Measurement[],
): Rows {
  const here = readyFor(rig, list, names);
  const zero = pinAtZero(here.own.rig, WINDAGE, here.zeroed.flight);
  const aims = [
    aimOf(zero, rig.zeroRange, here, ({ zeroed }) => zeroed),
    ...measurements.map((measurement) => {
      if (measurement.kind !== 'drop') return null;
      return aimOf(
        pinFor(here.own, zero, measurement, here.beside),
        measurement.aimedWith,
        here,
        ({ own }) => own,
      );
    }),
  ];
  const seen = measurements.map((measurement) => {
    const pin = pinFor(here.own, zero, measurement, here.beside);
    const day = here.on(measurement.setting);
    const predicted = predictOne(day, pin, measurement);
    const perPin = (predictOne(day, lower(pin, PIN_STEP), measurement) - predicted) / PIN_STEP;
    return { measurement, pin, predicted, perPin };
  });

  const columns = names.map((name, j) => {
    const step = STEP * at(typical, j);
    const there = readyFor(rig, list.with(j, at(list, j) + step), names);
    const flies = FLYING.includes(name);
    const zeroMoves = flies ? moveOf(at(aims, 0), there) : 0;
    return seen.map(({ measurement, pin, predicted, perPin }, i) => {
      const own = at(aims, i + 1);
      const aimed = own === null ? zeroMoves + travelMoves(measurement, here, there) : 0;
      if (!flies) return (aimed * perPin) / step;
      const moves = own === null ? aimed : moveOf(own, there);
      return (predictOne(there.on(measurement.setting), lower(pin, moves), measurement) - predicted) / step;
    });
  });
  return measurements.map((_, i) => columns.map((column) => at(column, i)));
}

const lower = ({ down, windage }: PinPosition, by: number): PinPosition => ({ down: down + by, windage });

/** A pin that was solved for a hit. */
type Aim = null | {
  readonly heightWith: (ready: Ready) => number;
  readonly height: number;
  readonly perPin: number;
};

function aimOf(pin: PinPosition, range: number, here: Ready, flownOf: (ready: Ready) => Flown): Aim {
  const heightAt = (ready: Ready, by: number): number => {
    const { flight, rig } = flownOf(ready);
    return impact(flight, rig, lower(pin, by), range).height;
  };
  const height = heightAt(here, 0);
  const perPin = (heightAt(here, PIN_STEP) - height) / PIN_STEP;
  return { heightWith: (ready) => heightAt(ready, 0), height, perPin };
}

/** How far down the pin goes so that the hit stays. */
const moveOf = (aim: Aim, there: Ready): number =>
  aim === null ? 0 : (aim.height - aim.heightWith(there)) / aim.perPin;

/** By how much lower than here a reading puts the pin, beside what the zero does. */
function travelMoves(measurement: Measurement, here: Ready, there: Ready): number {
  if (!isSightMark(measurement)) return 0;
  const travel = ({ own, beside }: Ready): number =>
    travelOf(own.rig.scale ?? TRAVEL_SCALE, measurement, beside.tapeRatio);
  return travel(there) - travel(here);
}
