/** One fin on a round body, as flat plates are drawn: a trapezoid whose root lies on the body. */
export interface TrapezoidFin {
  readonly rootChord: number;
  readonly tipChord: number;
  /** From the body's surface to the tip. */
  readonly height: number;
  /** How far the front of the tip lies behind the front of the root. */
  readonly sweep: number;
  /** Of the body where the fin stands. */
  readonly rootRadius: number;
}

/** Area of one side, m2. */
export const finArea = ({ rootChord, tipChord, height }: TrapezoidFin): number =>
  ((rootChord + tipChord) / 2) * height;

/** Chord of the rectangle of the same height and area. */
export const meanChord = (fin: TrapezoidFin): number => finArea(fin) / fin.height;

/** Cosine of the sweep of the line through the middles of the chords. */
export const midChordCosine = ({ rootChord, tipChord, height, sweep }: TrapezoidFin): number => {
  const back = sweep + (tipChord - rootChord) / 2;
  return height / Math.hypot(height, back);
};

/** Height of the mean aerodynamic chord above the body's surface. @source Barrowman, 1967, equation 3-30 */
export const meanChordHeight = ({ rootChord, tipChord, height }: TrapezoidFin): number =>
  ((height / 3) * (rootChord + 2 * tipChord)) / (rootChord + tipChord);

/**
 * Centre of pressure, behind the front of the root: the quarter point of the mean aerodynamic chord.
 *
 * @source Barrowman and Barrowman, The theoretical prediction of the center of pressure, 1966, equation for fins
 * @checked reference/barrowman
 */
export const finCentreOfPressure = ({ rootChord: r, tipChord: t, sweep }: TrapezoidFin): number =>
  ((sweep / 3) * (r + 2 * t) + (r * r + t * t + r * t) / 6) / (r + t);

/**
 * Integral of chord times radius squared over the height, radius from the body's axis.
 *
 *   (cr + ct)/2 r^2 s + (cr + 2 ct)/3 r s^2 + (cr + 3 ct)/12 s^3
 *
 * @source Barrowman, 1967, roll damping of trapezoidal fins
 * @checked reference/spin-per-metre
 */
export const chordRadiusSquared = ({
  rootChord: cr,
  tipChord: ct,
  height: s,
  rootRadius: r,
}: TrapezoidFin): number =>
  ((cr + ct) / 2) * r * r * s + ((cr + 2 * ct) / 3) * r * s * s + ((cr + 3 * ct) / 12) * s ** 3;
