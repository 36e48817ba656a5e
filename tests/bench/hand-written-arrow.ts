/**
 * The equations of a rigid arrow as one would write them down once for one arrow: time as the variable; position, velocity, axis,
 * transverse angular momentum, roll angle; linear laws, numbers as literals, no wind, no slope, no drag curve, no cross-flow.
 * What the tool's own equations cost is held against these.
 */
export const HAND_WRITTEN_SIZE = 13;

const MASS = 0.029159509;
const IX = 2.84e-7;
const IY = 2.03e-3;
const HALF_RHO_S = 0.5 * 1.225 * 3.0415e-5;
const [C0, C1, C2, CD] = [30.12, -10.67, 4.66, 2.5];
const [SPIN, SPIN_UP] = [4.51, 3.44];

export const handWritten = (_t: number, y: readonly number[], dydt: number[]): void => {
  const vx = y[3] ?? 0;
  const vy = y[4] ?? 0;
  const vz = y[5] ?? 0;
  const ex = y[6] ?? 0;
  const ey = y[7] ?? 0;
  const ez = y[8] ?? 0;
  const hx = y[9] ?? 0;
  const hy = y[10] ?? 0;
  const hz = y[11] ?? 0;
  const p = y[12] ?? 0;
  const V = Math.sqrt(vx * vx + vy * vy + vz * vz);
  const along = vx * ex + vy * ey + vz * ez;
  const wx = vx - along * ex;
  const wy = vy - along * ey;
  const wz = vz - along * ez;
  // de/dt = (H / Iy) x e.
  const dx = (hy * ez - hz * ey) / IY;
  const dy = (hz * ex - hx * ez) / IY;
  const dz = (hx * ey - hy * ex) / IY;
  const f = (-HALF_RHO_S * V) / MASS;
  const m = -HALF_RHO_S * V;
  dydt[0] = vx;
  dydt[1] = vy;
  dydt[2] = vz;
  dydt[3] = f * (CD * V * ex + C0 * wx + C1 * dx);
  dydt[4] = f * (CD * V * ey + C0 * wy + C1 * dy) - 9.80665;
  dydt[5] = f * (CD * V * ez + C0 * wz + C1 * dz);
  dydt[6] = dx;
  dydt[7] = dy;
  dydt[8] = dz;
  // dH/dt = x e x F - Ix p de/dt.
  const gx = C1 * wx + C2 * dx;
  const gy = C1 * wy + C2 * dy;
  const gz = C1 * wz + C2 * dz;
  dydt[9] = m * (ey * gz - ez * gy) - IX * p * dx;
  dydt[10] = m * (ez * gx - ex * gz) - IX * p * dy;
  dydt[11] = m * (ex * gy - ey * gx) - IX * p * dz;
  dydt[12] = ((SPIN * V - p) * V) / SPIN_UP;
};
