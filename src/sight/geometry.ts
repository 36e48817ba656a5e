import type { Launch } from '../flight/launch.ts';
import type { Vector3 } from '../numerics/vector.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../quantities/quantity.ts';

/**
 * Eye, peep, pin and arrow in one figure. Bow frame: b along the arrow at full draw, u bow-up square to it, r = b × u to
 * the right. The eye (peep) is the origin, the nock at −h u, the pin at E b − s u + w r where its travel is square to the arrow.
 */
export interface BowGeometry {
  /** h: the eye above the arrow at full draw, square to the arrow. */
  readonly peepHeight: Metres;
  /** E: from the peep to the pin, along the arrow. */
  readonly peepToPin: Metres;
  /** f: from the nock at full draw to the balance point when free flight begins, along the arrow. */
  readonly freeFlight: Metres;
  /** Tilt of the line the pin travels along, clockwise as the archer sees it: at a lean the pin moves left as it goes down. */
  readonly lean: Radians;
  /**
   * How far the line the pin travels along is from square to the arrow, seen from the side: positive when the pin goes away
   * from the archer as it goes down. The distance from the peep is counted with the pin level with the peep.
   */
  readonly barAngle: Radians;
  /** What the launch does to the height of this arrow beyond what it does to the one that the bow was measured with. */
  readonly jump?: Jump;
}

/** How an arrow leaves the bow: as if from a place higher by `rise` at the eye, and upwards by `angle`. */
export interface Jump {
  readonly rise: Metres;
  readonly angle: Radians;
}

/** Where the pin stands: its travel down its own line from the eye's parallel to the arrow, and the sight's windage. */
export interface PinPosition {
  readonly down: number;
  readonly windage: number;
}

/** E b + s t + w r of a pin, t the direction of its travel down, in the bow frame's (b, u, r). */
const pinInBowFrame = (
  { peepToPin, lean, barAngle }: BowGeometry,
  { down, windage }: PinPosition,
): Vector3 => {
  const square = down * Math.cos(barAngle);
  return [peepToPin + down * Math.sin(barAngle), -square * Math.cos(lean), windage - square * Math.sin(lean)];
};

/**
 * The launch when the line eye-to-pin lies on the line of sight and the bow is then turned by `cant` (clockwise positive)
 * about that line. The upright bow has r square to the line-of-sight frame's y. Exact for any angles.
 */
export function launchThrough(
  geometry: BowGeometry,
  pin: PinPosition,
  cant: Radians,
  speed: MetresPerSecond,
): Launch {
  const [E, U, R] = pinInBowFrame(geometry, pin);
  const length = Math.sqrt(E * E + U * U + R * R);
  const [qb, qu, qr] = [E / length, U / length, R / length];
  // Rows of the rotation that carries the pin's direction (qb, qu, qr) onto x and leaves r without a y-part.
  const rz = Math.sqrt(1 - qr * qr);
  const b: Vector3 = [qb, -qu / rz, (-qb * qr) / rz];
  const u: Vector3 = [qu, qb / rz, (-qu * qr) / rz];
  const [c, s] = [Math.cos(cant), Math.sin(cant)];
  const turned = ([x, y, z]: Vector3): Vector3 => [x, y * c - z * s, y * s + z * c];
  const [forward, up] = [turned(b), turned(u)];
  const { freeFlight: f, peepHeight: h } = geometry;
  const launch: Launch = {
    position: [f * forward[0] - h * up[0], f * forward[1] - h * up[1], f * forward[2] - h * up[2]],
    velocity: [speed * forward[0], speed * forward[1], speed * forward[2]],
    spin: si(0),
  };
  return geometry.jump === undefined ? launch : jumped(launch, geometry.jump);
}

function jumped(launch: Launch, { rise, angle }: Jump): Launch {
  const {
    position: [x, y, z],
    velocity: [vx, vy, vz],
  } = launch;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    ...launch,
    position: [x, y + rise + x * Math.tan(angle), z],
    velocity: [vx * c - vy * s, vx * s + vy * c, vz],
  };
}

/** Angle of the launch direction above the line of sight. */
export const launchAngle = ({ velocity: [x, y, z] }: Launch): Radians =>
  si(Math.atan2(y, Math.sqrt(x * x + z * z)));
