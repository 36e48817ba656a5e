import type { FinLift, Fins } from '../arrow/flying-arrow.ts';
import { ALIKE, type Asymmetry } from '../arrow/lift/asymmetry.ts';
import { staysUpright } from '../arrow/lift/stays-upright.ts';
import { referenceArea } from '../arrow/reference-area.ts';
import { reynoldsNumber } from '../atmosphere/reynolds-number.ts';
import type { Derivative } from '../numerics/ode.ts';
import { DomainError } from '../quantities/domain-error.ts';
import type { FlightConditions } from './conditions.ts';
import { CROSS_FLOW, shaftPoints } from './cross-flow.ts';
import { earthRotation, gravity } from './frame.ts';
import { LOWEST_WIND_HEIGHT, risingAir } from './moving-air.ts';
import type { RigidVector } from './rigid-frame.ts';
import { wakeGivesBack, wakePlace } from './wake-passing.ts';

/** What the rigid model may be asked to change; the values left out serve every real arrow. */
export interface RigidOptions {
  /** Null (default) for an arrow alike all round. */
  readonly asymmetry?: Asymmetry | null;
  /** Default 1.1; 0 leaves the linear laws alone, for comparison with closed forms. */
  readonly crossFlow?: number;
  /**
   * Whether two blades in front push square to themselves alone, from where they stand as the arrow rolls, instead of as many
   * blades would all round; default false. The roll of the launch is where they stand: 0 upright. No other number of blades
   * cares.
   */
  readonly bladesStand?: boolean;
  /**
   * Whether an arrow may fly whose centre of pressure is not behind its balance point, as a bare shaft's is not; default false.
   * Its cross-flow keeps it from tumbling, and whoever asks looks at how far aslant it flies.
   */
  readonly mayWander?: boolean;
}

/**
 * Square of the least forward part of the axis. The solver's trial states may be longer than a unit vector; they are
 * discarded, but must not produce a NaN. An arrow that really stands so far across is refused when its state is
 * read.
 */
const LEAST_FORWARD = 0.01;

/**
 * Equations of motion of the rigid arrow, per metre of range along the line of sight; components in rigid-frame.ts `RIGID_STATE`.
 *
 *   m dv/dt  = m g − 2 m Ω × v − ½ρS CD U² e − ½ρS (n0 w + n1 e′) + κρ2πR² p e × (B0 w + B1 e′)
 *   Iy (e″ + |e′|² e) = −½ρS (n1 w + n2 e′) + κρ2πR² p e × (B1 w + B2 e′) + Ix p e × e′
 *   Ix dp/dt = ½ρ N a Σ U (w′ U − p),   n_k = C_k U + (4K/πd) ∫ x^k |w + x e′| dx
 *
 * e direction of the shaft, e′ = de/dt, u velocity of the balance point through the air, U its size, w the part of u square to e,
 * p spin. C_k: sums of normal-force slope times place^k, which are what strips of nose, blades and vanes add up to, each at
 * its own incidence (w + x e′)/U: so the swing, its damping and the precession follow from where the surfaces are. B_k:
 * integrals of x^k along the shaft. The last integral is the shaft's cross-flow, by three Gauss points. As the incidence a
 * grows the wake of blades passes the vanes by, and they get back a²/(a² + a½²) of what it takes of them at none.
 *
 * The spin is settled by the same law as the everyday model's. Incidence is taken as small: beyond some 0.25 rad vanes stall.
 * Left out: the shaft's bending, the growth of axial drag with incidence (30 % at 17°), the Earth's turn under the shaft
 * (6e-9 rad against the air's restoring moment).
 *
 * @throws DomainError for an arrow of which too little is known, or, unless it may wander, whose centre of pressure is not behind
 *   its balance point
 * @source Newton and Euler in a frame that does not roll, e.g. Etkin, Dynamics of Atmospheric Flight, chapter 5; strips as in
 *   Barrowman, 1967; cross-flow as cited above
 */
export function rigidMotion(
  conditions: FlightConditions,
  { asymmetry = null, crossFlow = CROSS_FLOW, bladesStand = false, mayWander = false }: RigidOptions = {},
): Derivative<RigidVector> {
  const { arrow, air, wind, slope, eyeHeight, place } = conditions;
  const { attitude, drag, dragScale, mass, diameter } = arrow;
  if (attitude === null)
    throw new DomainError(
      'rigid arrow',
      Number.NaN,
      'an arrow whose parts, or inertia and surfaces, are known',
    );
  if (!(mayWander || staysUpright(arrow)))
    throw new DomainError(
      'first moment of the normal force',
      attitude.firstMoment,
      'below 0 m (centre of pressure behind balance)',
    );
  const { axialInertia, transverseInertia, normalSlope: C0, firstMoment: C1, secondMoment: C2 } = attitude;
  const [B0, B1, B2] = attitude.shaftMoments;
  const area = referenceArea(diameter);
  const perMass = (air.density * area) / (2 * mass);
  const perInertia = (air.density * area) / (2 * transverseInertia);
  const reynoldsPerSpeed = reynoldsNumber(air, 1, diameter);
  const shaftSide = arrow.sideForce * air.density * ((Math.PI / 2) * diameter * diameter);
  const [sidePerMass, sidePerInertia] = [shaftSide / mass, shaftSide / transverseInertia];
  const gyroscopic = axialInertia / transverseInertia;
  const spinPerMetre = attitude.spinPerMetre + (asymmetry ?? ALIKE).spinPerMetre;
  const spinRate = air.density / attitude.spinUp;
  const [gx, gy] = gravity(conditions);
  const [ox, oy, oz] = place === null ? [0, 0, 0] : earthRotation(place, slope);
  const { tail, across, up, shear, referenceHeight } = wind;
  const [alongRising, rising] = risingAir(up, slope);

  const wake = wakeGivesBack(attitude.fins);
  const vanePlace = wakePlace(attitude.fins);

  // The shaft's Gauss points, their weights, and weights times place and place squared, per unit of cross-flow.
  const [rear, middle, front] = shaftPoints(attitude.shaftMoments, diameter, crossFlow);
  const [xa, xb, xc] = [rear.place, middle.place, front.place];
  const [a0, b0] = [rear.weight, middle.weight];
  const [a1, b1, c1] = [a0 * xa, b0 * xb, a0 * xc];
  const [a2, b2, c2] = [a1 * xa, b1 * xb, c1 * xc];

  const standing = bladesStand ? pairOf(attitude.fins) : null;
  const [bladeForce, bladeMoment] =
    standing === null ? [0, 0] : [perMass * standing.slope, perInertia * standing.slope * standing.place];
  const bladePlace = standing === null ? 0 : standing.place;
  const rolling = asymmetry !== null || bladesStand;

  const [forceMark, forceClockwise] = (asymmetry ?? ALIKE).force;
  const [momentMark, momentClockwise] = (asymmetry ?? ALIKE).firstMoment;

  return (_range, y, dydx) => {
    // Read by index: destructuring an array costs a third of a derivative call.
    const vx = y[2];
    const vy = y[3];
    const vz = y[4];
    const p = y[5];
    const ey = y[7];
    const ez = y[8];
    const dy = y[9];
    const dz = y[10];
    const ex = Math.sqrt(Math.max(1 - ey * ey - ez * ez, LEAST_FORWARD));
    const dx = -(ey * dy + ez * dz) / ex;
    const turning2 = dx * dx + dy * dy + dz * dz;

    let gust = 1;
    if (shear !== 0) gust = (Math.max(eyeHeight + y[0], LOWEST_WIND_HEIGHT) / referenceHeight) ** shear;
    const ux = vx - gust * tail - alongRising;
    const uy = vy - rising;
    const uz = vz - gust * across;
    const U = Math.sqrt(ux * ux + uy * uy + uz * uz);
    const along = ux * ex + uy * ey + uz * ez;
    const wx = ux - along * ex;
    const wy = uy - along * ey;
    const wz = uz - along * ez;

    const w2 = wx * wx + wy * wy + wz * wz;
    const wd2 = 2 * (wx * dx + wy * dy + wz * dz);
    // Never below 0 but by rounding, where the root would not be a number.
    const sa = Math.sqrt(Math.abs(w2 + xa * (wd2 + xa * turning2)));
    const sb = Math.sqrt(Math.abs(w2 + xb * (wd2 + xb * turning2)));
    const sc = Math.sqrt(Math.abs(w2 + xc * (wd2 + xc * turning2)));
    const back = wake(w2, U);
    const n0 = (C0 + back) * U + a0 * (sa + sc) + b0 * sb;
    const n1 = (C1 + back * vanePlace) * U + a1 * sa + b1 * sb + c1 * sc;
    const n2 = (C2 + back * vanePlace * vanePlace) * U + a2 * sa + b2 * sb + c2 * sc;

    const f0 = -perMass * n0;
    const f1 = -perMass * n1;
    const m1 = -perInertia * n1;
    const m2 = -perInertia * n2;
    const axial = -perMass * dragScale * drag.at(reynoldsPerSpeed * U) * U * U;
    // e × w and e × e′.
    const ewx = ey * wz - ez * wy;
    const ewy = ez * wx - ex * wz;
    const ewz = ex * wy - ey * wx;
    const edy = ez * dx - ex * dz;
    const edz = ex * dy - ey * dx;
    const edx = ey * dz - ez * dy;
    const s0 = sidePerMass * p * B0;
    const s1 = sidePerMass * p * B1;
    const t1 = sidePerInertia * p * B1;
    const t2 = sidePerInertia * p * B2 + gyroscopic * p;

    let ax = axial * ex + f0 * wx + f1 * dx + s0 * ewx + s1 * edx + gx - 2 * (oy * vz - oz * vy);
    let ay = axial * ey + f0 * wy + f1 * dy + s0 * ewy + s1 * edy + gy - 2 * (oz * vx - ox * vz);
    let az = axial * ez + f0 * wz + f1 * dz + s0 * ewz + s1 * edz - 2 * (ox * vy - oy * vx);
    let ty = m1 * wy + m2 * dy + t1 * ewy + t2 * edy - turning2 * ey;
    let tz = m1 * wz + m2 * dz + t1 * ewz + t2 * edz - turning2 * ez;

    const perRange = 1 / vx;
    if (rolling) {
      const roll = y[11];
      if (roll === undefined) throw new RangeError('an arrow that is not alike all round needs a roll');
      const cosine = Math.cos(roll);
      const sine = Math.sin(roll);
      // Up and right square to the shaft: n = (ŷ − ey e)/s and e × n, s = √(1 − ey²).
      const s2 = Math.max(1 - ey * ey, LEAST_FORWARD);
      const perS = 1 / Math.sqrt(s2);
      const q = U * U;
      // What meets the blades, up and right square to the shaft; of it they feel twice what is square to them, where many would
      // feel it all.
      const meetsUp = (wy + bladePlace * dy) * perS;
      const meetsRight = (-ez * (wx + bladePlace * dx) + ex * (wz + bladePlace * dz)) * perS;
      const flat = 2 * (cosine * meetsRight - sine * meetsUp) * U;
      const moreUp = -sine * flat - meetsUp * U;
      const moreRight = cosine * flat - meetsRight * U;
      const forceUp =
        (perMass * q * (forceMark * cosine - forceClockwise * sine) - bladeForce * moreUp) * perS;
      const forceRight =
        (perMass * q * (forceMark * sine + forceClockwise * cosine) - bladeForce * moreRight) * perS;
      const momentUp =
        (perInertia * q * (momentMark * cosine - momentClockwise * sine) - bladeMoment * moreUp) * perS;
      const momentRight =
        (perInertia * q * (momentMark * sine + momentClockwise * cosine) - bladeMoment * moreRight) * perS;
      ax += -forceUp * ey * ex - forceRight * ez;
      ay += forceUp * s2;
      az += -forceUp * ey * ez + forceRight * ex;
      ty += momentUp * s2;
      tz += -momentUp * ey * ez + momentRight * ex;
      // The axes "up" and "right" turn about the shaft themselves, by ey (e × e′)·ŷ / s².
      dydx[11] = (p - (ey * edy) / s2) * perRange;
    }

    dydx[0] = vy * perRange;
    dydx[1] = vz * perRange;
    dydx[2] = ax * perRange;
    dydx[3] = ay * perRange;
    dydx[4] = az * perRange;
    dydx[5] = (spinPerMetre * U - p) * spinRate * U * perRange;
    dydx[6] = perRange;
    dydx[7] = dy * perRange;
    dydx[8] = dz * perRange;
    dydx[9] = ty * perRange;
    dydx[10] = tz * perRange;
  };
}

/** The blades that care how they stand: two of them. */
const pairOf = (fins: Fins | undefined): FinLift | null =>
  fins === undefined || fins.blades === null || fins.blades.count !== 2 ? null : fins.blades;
