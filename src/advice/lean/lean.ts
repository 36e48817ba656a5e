import { calm } from '../../atmosphere/wind.ts';
import type { LateralFit } from '../../calibration/sideways/lateral-fit.ts';
import { at } from '../../numerics/at.ts';
import { NumericalError } from '../../numerics/numerical-error.ts';
import { quadraticForm } from '../../numerics/quadratic-form.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../../quantities/quantity.ts';
import { marksFor } from '../../sight/marks.ts';
import type { Rig } from '../../sight/rig.ts';
import { settledDrift } from './settled-drift.ts';

/** The one tilt that takes the curved part of the sideways miss out, clockwise as the archer sees it positive. */
export interface Lean {
  /** Of the line the pin travels along, against the bow's upright as the level shows it. */
  readonly lean: Radians;
  /** From how the travel leans now. */
  readonly turn: Radians;
  readonly sd: Radians;
  /** The cant of the whole bow that would do the same with the travel left as it is. */
  readonly bowLean: Radians;
  /**
   * The steady crosswind whose curve the same turn would take out, to the right positive: what could have been taken for a lean.
   */
  readonly windAlike: MetresPerSecond;
  /** Off to the side at each range of the span with windage set at the zero range: as things are, and with the lean. */
  readonly now: readonly Metres[];
  readonly left: readonly Metres[];
  /** Largest of `left`, without its sign. */
  readonly residualMax: Metres;
  /** Leans that would cancel the spin's parts alone, in closed form; null when the arrow's attitude is not known. */
  readonly closedForm: { readonly gyroscopic: Radians; readonly shaftForceCeiling: Radians } | null;
}

/**
 * The lean by least squares on the full model over a span of ranges (m): windage set at the zero range, then Σ lateral²
 * made least. It counts what the fit found (plumb, side force), the spin, how the bow is held, and the Earth's turning when
 * the place is given. It leaves out the wind, which will not blow so tomorrow.
 *
 * In closed form a right helical asks for tan(lean) = w′ Ix/(m l) (1 − CD/CNa), clockwise: its drift is to the left and a
 * pin that moves left as it goes down brings the arrow back to the right.
 *
 * @param span two ranges or more, not all the zero range
 * @returns `sd` from the covariance of the fit's plumb and side force; its priors where nothing was shot
 * @throws NumericalError 'not-converged' when no lean does it
 * @checked reference/sideways-figures; mirror law
 */
export function leanFor(rig: Rig, fit: LateralFit, span: readonly number[]): Lean {
  const known = asFound(rig, fit);
  const leaning = (lean: number, of: Rig = known): readonly number[] =>
    lateral({ ...of, geometry: { ...of.geometry, lean: si(lean) } }, span);
  const canted = (cant: number): readonly number[] => lateral({ ...known, cant: si(cant) }, span);

  const lean = cancelling(leaning, rig.geometry.lean);
  const perLean = slopeOf((angle) => leaning(angle), lean, STEP);
  const weight = dot(perLean, perLean);
  const towards = (perCause: readonly number[]): number => -dot(perLean, perCause) / weight;
  const { sideForce } = known.conditions.arrow;
  const gradient = fit.unknowns.map((name) => {
    if (name === 'plumb')
      return towards(slopeOf((cant) => leaning(lean, { ...known, cant: si(cant) }), known.cant, STEP));
    if (name === 'side_force')
      return towards(slopeOf((share) => leaning(lean, withSideForce(known, share)), sideForce, 1));
    return 0;
  });
  const left = leaning(lean).map((value) => si<'m'>(value));
  const settled = settledDrift(rig.conditions, rig.launchSpeed);
  return {
    lean: si(lean),
    turn: si(lean - rig.geometry.lean),
    sd: si(Math.sqrt(quadraticForm(fit.covariance, gradient))),
    bowLean: si(cancelling(canted, known.cant) - known.cant),
    windAlike: si(
      (lean - rig.geometry.lean) / towards(slopeOf((wind) => blown(known, wind, span), 0, WIND_STEP)),
    ),
    now: leaning(rig.geometry.lean).map((value) => si<'m'>(value)),
    left,
    residualMax: si(Math.max(...left.map(Math.abs))),
    closedForm:
      settled === null
        ? null
        : {
            gyroscopic: si(Math.atan(-settled.gyroscopic)),
            shaftForceCeiling: si(Math.atan(-settled.shaftForceCeiling)),
          },
  };
}

/** The rig as the fit found it, in still air. */
function asFound(rig: Rig, { unknowns, values }: LateralFit): Rig {
  // What the fit did not ask for is as the rig has it.
  const found = (name: 'plumb' | 'side_force'): number =>
    unknowns.includes(name) ? at(values, unknowns.indexOf(name)) : 0;
  const still = { ...rig, conditions: { ...rig.conditions, wind: calm } };
  const sideForce = rig.conditions.arrow.sideForce + found('side_force');
  return withSideForce({ ...still, cant: si(rig.cant + found('plumb')) }, sideForce);
}

const withSideForce = (rig: Rig, sideForce: number): Rig => ({
  ...rig,
  conditions: { ...rig.conditions, arrow: { ...rig.conditions.arrow, sideForce } },
});

const lateral = (rig: Rig, span: readonly number[]): readonly number[] =>
  marksFor(rig, span).marks.map((mark) => mark.lateral);

const blown = (rig: Rig, across: number, span: readonly number[]): readonly number[] =>
  lateral({ ...rig, conditions: { ...rig.conditions, wind: { ...calm, across: si(across) } } }, span);

/** Of the difference in the wind, m/s. */
const WIND_STEP = 1;
/** Step of the central differences, rad. */
const STEP = 1e-3;
/** An angle found to this is found to a millionth of a millimetre at 100 m. */
const FOUND = 1e-9;
const MAX_STEPS = 20;

/** The angle at which Σ f² is least, for an f nearly straight in it, by Gauss and Newton. */
function cancelling(f: (angle: number) => readonly number[], start: number): number {
  let angle = start;
  for (let i = 0; i < MAX_STEPS; i += 1) {
    const slope = slopeOf(f, angle, STEP);
    const step = -dot(slope, f(angle)) / dot(slope, slope);
    if (!Number.isFinite(step)) break;
    angle += step;
    if (Math.abs(step) < FOUND) return angle;
  }
  throw new NumericalError('not-converged', 'no lean cancels the sideways drift over this span', angle);
}

function slopeOf(f: (x: number) => readonly number[], x: number, step: number): readonly number[] {
  const [above, below] = [f(x + step), f(x - step)];
  return above.map((value, i) => (value - at(below, i)) / (2 * step));
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * at(b, i), 0);
