import type { Arrow } from '../../../src/arrow/arrow.ts';
import type { FinRing } from '../../../src/arrow/lift/fin-ring.ts';
import { arrowLength, nockLength } from '../../../src/arrow/parts/pieces.ts';
import { gravity } from '../../../src/flight/frame.ts';
import {
  add,
  cross,
  dot,
  length,
  rotate,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../../src/numerics/vector.ts';
import { STANDARD_GRAVITY } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { seaLevel } from './point-arrow.ts';

/** How an arrow moves at one moment, in still air. */
export interface Motion {
  readonly velocity: Vector3;
  readonly axis: Vector3;
  /** de/dt, square to the axis. */
  readonly turning: Vector3;
  readonly spin: number;
  readonly roll: number;
}

export interface Accelerations {
  readonly velocity: Vector3;
  /** d2e/dt2 */
  readonly turning: Vector3;
  readonly spin: number;
}

const STRIPS = 400;
const SLICES = 20_000;
const CROSS_FLOW = 1.1;

/**
 * The forces on an arrow summed the slow way: every vane and blade in strips across its height, each with the speed that flight,
 * swing and spin give it; the shaft in slices; moments by cross products. It shares nothing with the model under test but the
 * slopes of the surfaces.
 *
 * A ring's slope in sideways flow holds the body's interference, which the strips get as a factor; the roll has none (build the
 * arrow with shaftSlowsSpin: false).
 */
export function stripByStrip(arrow: Arrow, { velocity, axis, turning, spin, roll }: Motion): Accelerations {
  const { flying, surfaces, parts } = arrow;
  if (surfaces === null || parts === null || flying.attitude === null) throw new Error('an arrow from parts');
  const U = length(velocity);
  const rho = seaLevel.density;
  const area = (Math.PI / 4) * flying.diameter ** 2;
  const rates = add(cross(axis, turning), scale(axis, spin));
  let force = scale(
    axis,
    -0.5 * rho * area * flying.drag.at((rho * U * flying.diameter) / seaLevel.viscosity) * U * U,
  );
  let moment: Vector3 = [0, 0, 0];
  const push = (f: Vector3, arm: Vector3): void => {
    force = add(force, f);
    moment = add(moment, cross(arm, f));
  };
  const velocityAt = (arm: Vector3): Vector3 => add(velocity, cross(rates, arm));
  const square = (v: Vector3): Vector3 => subtract(v, scale(axis, dot(v, axis)));

  const noseArm = scale(axis, surfaces.nose.place - flying.balance);
  push(scale(square(velocityAt(noseArm)), -0.5 * rho * area * surfaces.nose.slope * U), noseArm);

  const mark = unit(square([0, 1, 0]));
  const ring = ({ count, fin, slope, ringSlope, place, angle }: FinRing): void => {
    const finArea = ((fin.rootChord + fin.tipChord) / 2) * fin.height;
    const body = (ringSlope * area) / ((count / 2) * slope * finArea);
    for (let k = 0; k < count; k++) {
      const out = rotate(mark, axis, roll + (2 * Math.PI * k) / count);
      const clockwise = cross(axis, out);
      for (let j = 0; j < STRIPS; j++) {
        const share = (j + 0.5) / STRIPS;
        const radius = fin.rootRadius + share * fin.height;
        const chord = fin.rootChord + share * (fin.tipChord - fin.rootChord);
        const arm = add(scale(axis, place - flying.balance), scale(out, radius));
        const slip = dot(square(velocityAt(scale(axis, place - flying.balance))), clockwise);
        const turned = spin * radius - angle * U;
        const strip = (chord * fin.height) / STRIPS;
        push(scale(clockwise, -0.5 * rho * slope * strip * U * (body * slip + turned)), arm);
      }
    }
  };
  for (const fins of [surfaces.vanes, surfaces.blades]) if (fins !== null) ring(fins);

  const [rear, front] = [nockLength(parts.nock) - flying.balance, arrowLength(parts) - flying.balance];
  const slice = (front - rear) / SLICES;
  for (let j = 0; j < SLICES; j++) {
    const arm = scale(axis, rear + (j + 0.5) * slice);
    const w = square(velocityAt(arm));
    push(scale(w, -0.5 * rho * CROSS_FLOW * flying.diameter * slice * length(w)), arm);
    const sideways = flying.sideForce * rho * 2 * Math.PI * (flying.diameter / 2) ** 2 * spin * slice;
    push(scale(cross(axis, w), sideways), arm);
  }

  // dH/dt = M with H = Ix p e + Iy e x e'.
  const { axialInertia: Ix, transverseInertia: Iy } = flying.attitude;
  const rollMoment = dot(moment, axis);
  const across = subtract(subtract(moment, scale(axis, rollMoment)), scale(turning, Ix * spin));
  const [gx, gy, gz] = gravity({ slope: si(0), freeFall: STANDARD_GRAVITY });
  return {
    velocity: add(scale(force, 1 / flying.mass), [gx, gy, gz]),
    turning: subtract(cross(scale(across, 1 / Iy), axis), scale(axis, dot(turning, turning))),
    spin: rollMoment / Ix,
  };
}
