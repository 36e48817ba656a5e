import type { Attitude } from '../arrow/flying-arrow.ts';
import { referenceArea } from '../arrow/reference-area.ts';
import { reynoldsNumber } from '../atmosphere/reynolds-number.ts';
import type { Derivative } from '../numerics/ode.ts';
import { si } from '../quantities/quantity.ts';
import type { FlightConditions } from './conditions.ts';
import { earthRotation, type FlightVector, gravity } from './frame.ts';
import { LOWEST_WIND_HEIGHT, risingAir } from './moving-air.ts';

/**
 * Coefficients of the steady side and lift accelerations of an arrow that follows its falling path at its small
 * equilibrium incidence. With v̂ the direction of flight, g gravity, g⊥ its part square to v̂, p spin, V airspeed:
 *
 *   a = (p/V) [A (1 − CD/CNa) + κ (M₀ + M₁ (CNa − CD))] (v̂ × g)  −  L ((CNa − CD) l_eff − |CMa|) g⊥
 *
 * A = Ix/(m l) is gyroscopic, M₀ and M₁ come from the spinning shaft in the cross-flow of a path-following arrow, and the
 * last term is what is left of the lift of an arrow that must keep pitching down. l static margin, |CMa| = CNa l,
 * l_eff = Σ CN x² / |Σ CN x|, L = ρS/2m. All of it is steady: the entry into a wind is added
 * apart (entry.ts), and what else the first swing does is the rigid model's (advice/builds/launch-lift.ts, advice/lean/drift.ts).
 */
interface SteadyLift {
  readonly gyroscopic: number;
  readonly shaftForce: number;
  readonly shaftMoment: number;
  readonly path: number;
  readonly followLength: number;
  readonly momentSlope: number;
  readonly normalSlope: number;
}

function steadyLift(attitude: Attitude, { arrow, air }: FlightConditions): SteadyLift {
  const { normalSlope, firstMoment, secondMoment, axialInertia, shaftMoments } = attitude;
  const momentSlope = -firstMoment;
  const margin = momentSlope / normalSlope;
  const followLength = secondMoment / momentSlope;
  const [B0, B1, B2] = shaftMoments;
  const radius = arrow.diameter / 2;
  const shaft = (arrow.sideForce * air.density * 2 * Math.PI * radius * radius) / arrow.mass;
  return {
    gyroscopic: axialInertia / (arrow.mass * margin),
    shaftForce: shaft * (B0 * followLength + B1),
    shaftMoment: (shaft * (B1 * followLength + B2)) / momentSlope,
    path: (air.density * referenceArea(arrow.diameter)) / (2 * arrow.mass),
    followLength,
    momentSlope,
    normalSlope,
  };
}

/** An arrow of which only mass, diameter and drag are known takes up no spin. */
/** An arrow that never spins. */
export const SPINLESS: Pick<Attitude, 'spinPerMetre' | 'spinUp'> = {
  spinPerMetre: si(0),
  spinUp: si(Number.POSITIVE_INFINITY),
};

/** Stands in where only mass, diameter and drag are known, and for an arrow that keeps no steady attitude: no lift. */
const NO_LIFT: SteadyLift = {
  gyroscopic: 0,
  shaftForce: 0,
  shaftMoment: 0,
  path: 0,
  followLength: 0,
  momentSlope: 0,
  normalSlope: 1,
};

/**
 * Equations of motion of the everyday model, per metre of range along the line of sight.
 *
 *   dv/dx = (−½ρ S CD |u| u / m + g − 2Ω × v + a_lift) / v_x ,   u = v − wind,   CD = scale · CD(ρ|u|d/μ)
 *   dp/dx = (w′|u| − p) ρ|u| / (spin-up · v_x)
 *
 * A point mass with spin: state order in flight/frame.ts `STATE`. Range is the independent variable, so that "at 60 m"
 * needs no search; the arrow must keep moving forward (v_x > 0), which the integrator's guards turn into an error.
 *
 * An arrow whose centre of pressure is not behind its balance point (a bare shaft, say) finds no equilibrium to ride at; it
 * is flown as a point, and whoever shows the result says so.
 *
 * @source steady lift: derived from the linear pitch and yaw equations of a finned body (moment balance of an arrow whose
 *   path turns at g cos γ / V); compare McCoy, Modern Exterior Ballistics, ch. 10, for the spin-stabilised case
 */
export function driftingMotion(conditions: FlightConditions): Derivative<FlightVector> {
  const { arrow, air, wind, slope, eyeHeight, place } = conditions;
  const drag = arrow.drag;
  const k = (air.density * referenceArea(arrow.diameter) * arrow.dragScale) / (2 * arrow.mass);
  const reynoldsPerSpeed = reynoldsNumber(air, 1, arrow.diameter);
  const [gx, gy] = gravity(conditions);
  const steady = arrow.attitude !== null && arrow.attitude.firstMoment < 0;
  const lift = steady ? steadyLift(arrow.attitude, conditions) : NO_LIFT;
  const { gyroscopic, shaftForce, shaftMoment, path, followLength, momentSlope, normalSlope } = lift;
  const { spinPerMetre, spinUp } = arrow.attitude ?? SPINLESS;
  const spinRate = air.density / spinUp;
  const [ox, oy, oz] = place === null ? [0, 0, 0] : earthRotation(place, slope);
  const { tail, across, up, shear, referenceHeight } = wind;
  const [alongRising, rising] = risingAir(up, slope);
  const dragScale = arrow.dragScale;

  return (_range, y, dydx) => {
    // Read by index: destructuring an array costs a third of a derivative call.
    const vx = y[2];
    const vy = y[3];
    const vz = y[4];
    const p = y[5];
    let gust = 1;
    if (shear !== 0) gust = (Math.max(eyeHeight + y[0], LOWEST_WIND_HEIGHT) / referenceHeight) ** shear;
    const ux = vx - gust * tail - alongRising;
    const uy = vy - rising;
    const uz = vz - gust * across;
    const V = Math.sqrt(ux * ux + uy * uy + uz * uz);
    const shape = drag.at(reynoldsPerSpeed * V);
    const CD = shape * dragScale;
    const f = -k * shape * V;

    const side =
      (p / (V * V)) * (gyroscopic * (1 - CD / normalSlope) + shaftForce + shaftMoment * (normalSlope - CD));
    const rise = path * ((normalSlope - CD) * followLength - momentSlope);
    const along = (gx * ux + gy * uy) / (V * V);

    const ax = f * ux + gx - side * uz * gy - rise * (gx - along * ux) - 2 * (oy * vz - oz * vy);
    const ay = f * uy + gy + side * uz * gx - rise * (gy - along * uy) - 2 * (oz * vx - ox * vz);
    const az = f * uz + side * (ux * gy - uy * gx) + rise * along * uz - 2 * (ox * vy - oy * vx);

    const perRange = 1 / vx;
    dydx[0] = vy * perRange;
    dydx[1] = vz * perRange;
    dydx[2] = ax * perRange;
    dydx[3] = ay * perRange;
    dydx[4] = az * perRange;
    dydx[5] = (spinPerMetre * V - p) * spinRate * V * perRange;
    dydx[6] = perRange;
  };
}
