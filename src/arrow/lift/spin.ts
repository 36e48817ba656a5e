import { chordRadiusSquared, finArea, meanChordHeight, type TrapezoidFin } from './trapezoid-fin.ts';

/**
 * Settled spin per metre flown by canted vanes: the forcing of the cant balances the damping of the spin. Strips lift by the
 * same slope in both, so the slope, the speed and the air's density cancel.
 *
 *   w' = (y + r) A delta / integral(c r^2 dr) x Kf / Kd
 *
 * The strips alone (`interference` left out) turn faster. Either is an upper estimate: the roots stand in the shaft's
 * slower boundary layer.
 *
 * @param angle of the vanes to the shaft, radians, right helical positive
 * @param interference factors of the body, see `bodyInterference`
 * @returns rad/m
 * @source Barrowman, 1967, equations 3-31 and 3-34, with the same slope on both sides (the printed form damps with the
 *   two-dimensional slope, which makes vanes as short as an arrow's turn eight times too slowly)
 * @checked reference/spin-per-metre
 */
export function spinPerMetre(fin: TrapezoidFin, angle: number, interference = NO_INTERFERENCE): number {
  const arm = meanChordHeight(fin) + fin.rootRadius;
  return (
    ((arm * finArea(fin) * angle) / chordRadiusSquared(fin)) * (interference.forcing / interference.damping)
  );
}

/** How the body's presence changes the rolling moments of canted fins and of spinning fins. */
export interface RollInterference {
  readonly forcing: number;
  readonly damping: number;
}

export const NO_INTERFERENCE: RollInterference = { forcing: 1, damping: 1 };

/** Both factors for a fin on a round body. */
export const bodyInterference = ({
  rootRadius,
  height,
  rootChord,
  tipChord,
}: TrapezoidFin): RollInterference => {
  const spanRatio = (height + rootRadius) / rootRadius;
  return {
    forcing: forcingInterference(spanRatio),
    damping: dampingInterference(spanRatio, tipChord / rootChord),
  };
};

/**
 * Factor on the rolling moment of canted fins.
 *
 * @param t span ratio (s + r) / r, above 1
 * @returns 0.93 to 1; 1 for very tall fins
 * @source Barrowman, 1967, equation 3-41
 * @checked reference/roll-interference
 */
export function forcingInterference(t: number): number {
  const p = t * t + 1;
  const q = t * (t - 1);
  const A = Math.asin((t * t - 1) / p);
  return (
    ((Math.PI ** 2 / 4) * ((t + 1) / t) ** 2 +
      Math.PI * (p / q) ** 2 * A -
      (2 * Math.PI * (t + 1)) / q +
      (p / q) ** 2 * A * A -
      ((4 * (t + 1)) / q) * A +
      (8 / (t - 1) ** 2) * Math.log(p / (2 * t))) /
    Math.PI ** 2
  );
}

/**
 * Factor on the roll damping of spinning fins.
 *
 * @param t span ratio (s + r) / r, above 1
 * @param taper tip chord / root chord
 * @source Barrowman, 1967, equation 3-45
 * @checked reference/roll-interference
 */
export function dampingInterference(t: number, taper: number): number {
  const gained = (t - taper) / t - ((1 - taper) / (t - 1)) * Math.log(t);
  const alone = ((t + 1) * (t - taper)) / 2 - ((1 - taper) * (t ** 3 - 1)) / (3 * (t - 1));
  return 1 + gained / alone;
}

/**
 * Length in which spin grows to its settled value, times the air's density.
 *
 *   Ix / (0.5 N a Kd integral(c r^2 dr)),   dw/dx = (w' V - w) density / this
 *
 * @param slope a: normal-force slope of one fin on its own area, per radian
 * @returns kg/m2
 * @source Barrowman, 1967, equation 3-34, with the finite-span slope
 */
export const spinUp = (
  fin: TrapezoidFin,
  count: number,
  slope: number,
  axialInertia: number,
  interference = NO_INTERFERENCE,
): number => axialInertia / (0.5 * count * slope * interference.damping * chordRadiusSquared(fin));
