import { type BowEnergy, logSpeedGradient } from '../../bow/energy.ts';
import type { Calibration } from '../../calibration/fit.ts';
import { priorOf } from '../../calibration/parameters.ts';
import { at } from '../../numerics/at.ts';
import type { BowAndArrows, Candidate } from './candidate.ts';
import { candidateDrag, dragPrior, regression } from './drag-errors.ts';
import { cause, combined, type ErrorForm, scaled, standardError } from './error-form.ts';

/** What the numbers behind every flight and every launch may be wrong by. */
export interface LocalErrors {
  /** m/s. */
  readonly speed: ErrorForm;
  /** Of the factor on the drag. */
  readonly drag: ErrorForm;
  /** m. */
  readonly peep: ErrorForm;
  /** kg; nothing for an arrow that was weighed. Its part in the speed is in that. */
  readonly mass: ErrorForm;
  /** Of the logarithm of the bow's virtual mass. */
  readonly virtualMass: ErrorForm;
}

export interface BowErrors {
  readonly base: LocalErrors;
  /** Of the parameters of the fit that belong to the sight, in the order of PARAMETERS: `scale_ratio` and `scale_offset`. */
  readonly sight: readonly [scaleRatio: ErrorForm, scaleOffset: ErrorForm];
  readonly candidates: readonly {
    readonly errors: LocalErrors;
    /** How much of the correction that the base's marks gave its drag holds for this build. */
    readonly dragShare: number;
  }[];
}

/** The errors of all builds of one bow over the causes they share. */
export function bowErrors(bow: BowAndArrows, energy: BowEnergy): BowErrors {
  const { calibration, name, identity } = bow;
  const { priors, problem, names } = calibration;
  const { rig } = problem;
  const drag = dragPrior(name, bow.arrow, rig, priors.drag_scale.sd);
  const known: Readonly<Record<string, ErrorForm>> = {
    launch_speed: cause(`${bow.rated ? 'rating' : 'chronograph'}:${name}`, priors.launch_speed.sd),
    drag_scale: drag.form,
    peep_height: cause(`peep height:${identity}`, priors.peep_height.sd),
  };
  // Elsewhere the fit's parameters of the days and the tape play no part.
  const priorForms = names.map(
    (parameter) => known[parameter] ?? cause(`sight:${parameter} ${name}`, priorOf(priors, parameter).sd),
  );
  const [speed, calibratedDrag, peep, ...sight] = posteriorForms(name, calibration, priorForms);
  const virtualMass = virtualMassForm(bow, energy, speed);
  const base: LocalErrors = { speed, drag: calibratedDrag, peep, mass: new Map(), virtualMass };
  return {
    base,
    sight,
    candidates: bow.candidates.map((candidate) => {
      const prior = candidateDrag(drag, candidate);
      const dragShare = regression(prior, drag.form);
      return {
        dragShare,
        errors: {
          speed: speedForm(bow, energy, candidate, speed, virtualMass),
          // What follows the base's drag is as sure as the marks made that; the rest they said nothing about.
          drag: combined([
            [dragShare, calibratedDrag],
            [1, prior],
            [-dragShare, drag.form],
          ]),
          peep,
          mass: massForm(candidate),
          virtualMass,
        },
      };
    }),
  };
}

/**
 * Errors of calibrated parameters: part of the prior's error that the marks left, and an error the marks brought.
 *
 *   e = C P⁻¹ e_prior + n,   cov(n) = C − C P⁻¹ C
 *
 * C covariance after, P before; a widened calibration widens both parts.
 */
function posteriorForms(
  name: string,
  { covariance: C, widening, priors, names }: Calibration,
  priorForms: readonly ErrorForm[],
): [ErrorForm, ErrorForm, ErrorForm, ErrorForm, ErrorForm] {
  const sds = names.map((parameter) => priorOf(priors, parameter).sd);
  const scale = (i: number, j: number): number => at(sds, i) * at(sds, j) * widening ** 2;
  const kept = C.map((row, i) => row.map((value, j) => value / scale(i, j)));
  const noise = kept.map((row) =>
    row.map((value, j) => value - row.reduce((sum, a, k) => sum + a * at(at(kept, k), j), 0)),
  );
  const factor = lowerFactor(noise);
  const form = (i: number): ErrorForm =>
    scaled(
      widening * at(sds, i),
      combined([
        ...priorForms.map((prior, j): [number, ErrorForm] => [at(at(kept, i), j) / at(sds, j), prior]),
        ...names.map((_, k): [number, ErrorForm] => [at(at(factor, i), k), cause(`shots:${name} ${k}`, 1)]),
      ]),
    );
  return [form(0), form(1), form(2), form(3), form(4)];
}

/** L with L Lᵀ = A for a matrix that may be singular; a pivot that rounding made negative counts as 0. */
function lowerFactor(A: readonly (readonly number[])[]): number[][] {
  const L = A.map((row) => row.map(() => 0));
  for (const [i, row] of A.entries())
    for (let j = 0; j <= i; j += 1) {
      let left = at(row, j);
      for (let k = 0; k < j; k += 1) left -= at(at(L, i), k) * at(at(L, j), k);
      const [target, pivot] = [at(L, i), at(at(L, j), j)];
      if (i === j) target[j] = left > ROUNDING ? Math.sqrt(left) : 0;
      else target[j] = pivot > 0 ? left / pivot : 0;
    }
  return L;
}
/** Of a matrix whose elements are at most 1. */
const ROUNDING = 1e-12;

/** The error of ln K: each chronographed speed and the prior, by their weight in the fit. */
function virtualMassForm(
  { identity, name, virtualMass }: BowAndArrows,
  energy: BowEnergy,
  baseSpeed: ErrorForm,
): ErrorForm {
  const C = at(energy.logCovariance, 1);
  const gain = (h: readonly [number, number], sd: number): number =>
    (at(C, 0) * h[0] + at(C, 1) * h[1]) / sd ** 2;
  const form = combined([
    [gain([0, 1], virtualMass.logSd), cause(`virtual mass:${identity}`, virtualMass.logSd)],
    ...energy.arrows.map(({ mass, speed, speedSd, name: arrow }, i): [number, ErrorForm] => [
      gain(logSpeedGradient(energy, mass), speedSd / speed) / speed,
      i === 0 ? baseSpeed : cause(`chronograph:${arrow ?? `${name} ${i}`}`, speedSd),
    ]),
  ]);
  // The fit widens its errors when its arrows scatter.
  const spread = standardError(form);
  return spread > 0 ? scaled(Math.sqrt(at(C, 1)) / spread, form) : form;
}

/** Of a build's mass, kg; nothing where it was weighed. */
const massForm = ({ name, massSd }: Candidate): ErrorForm =>
  massSd > 0 ? cause(`mass:${name}`, massSd) : new Map();

function speedForm(
  { calibration }: BowAndArrows,
  { virtualMass: K }: BowEnergy,
  candidate: Candidate,
  baseSpeed: ErrorForm,
  virtualMass: ErrorForm,
): ErrorForm {
  const { name, arrow, speed } = candidate;
  if (speed !== null) return cause(`chronograph:${name}`, speed.sd);
  const { conditions, launchSpeed } = calibration.rig;
  const [m, heavier] = [conditions.arrow.mass + K, arrow.flying.mass + K];
  const ratio = Math.sqrt(m / heavier);
  return combined([
    [ratio, baseSpeed],
    [(launchSpeed * ratio * K * (1 / m - 1 / heavier)) / 2, virtualMass],
    [(-launchSpeed * ratio) / (2 * heavier), massForm(candidate)],
  ]);
}
