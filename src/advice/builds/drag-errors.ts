import type { Arrow } from '../../arrow/arrow.ts';
import { DRAG_UNCERTAINTY } from '../../arrow/drag/drag.ts';
import { reynoldsNumber } from '../../atmosphere/reynolds-number.ts';
import type { Rig } from '../../sight/rig.ts';
import type { Candidate } from './candidate.ts';
import { cause, combined, covariance, type ErrorForm, scaled, standardError } from './error-form.ts';

/** Share of each term of the build-up in the drag at launch. */
type Shares = ReadonlyMap<string, number>;

/** The relative error of a base arrow's drag before any mark, in a form that other builds can share. */
export interface DragPrior {
  readonly form: ErrorForm;
  readonly shares: Shares | null;
  /** Relative uncertainty of the law of each term that is no shape's own. */
  readonly lawSd: number;
}

/**
 * Relative standard uncertainty of what the shape of a head costs by itself, its own for every shape: the coefficients of
 * points and blades come from other bodies, and a mechanical head's is a guess. A judgement: published faces and cones differ
 * by as much.
 */
const SHAPE_UNCERTAINTY = 0.4;

/** Terms that belong to the shape of the head, by the names that the shares have them under. */
const isShape = (name: string): boolean => name.startsWith('point ') || name === 'blades';

/**
 * The relative error of a drag that was built up. The law of every term is off by a factor of its own, the same for all arrows:
 * two builds of one shape err alike. What a head's shape costs is off by 40 % of its own, each shape for itself, so that a
 * change of shape is as uncertain as both.
 *
 * @param sd of the whole, relative
 */
export function dragPrior(name: string, arrow: Arrow, rig: Rig, sd: number): DragPrior {
  const shares = sharesOf(arrow, rig);
  if (shares === null || arrow.dragFrom === 'given') {
    const lawSd = shares === null ? 0 : lawSdOf(shares, DRAG_UNCERTAINTY);
    return { form: cause(`given drag:${name}`, sd), shares, lawSd };
  }
  const lawSd = lawSdOf(shares, sd);
  const form = lawForm(shares, lawSd);
  // The whole is as uncertain as it is told to be, however much of it is the head's.
  return { form: scaled(sd / standardError(form), form), shares, lawSd };
}

/** The same for a candidate, relative to its base. */
export function candidateDrag(base: DragPrior, { name, arrow, rig, ownDragSd }: Candidate): ErrorForm {
  if (ownDragSd !== null) return cause(`given drag:${name}`, ownDragSd);
  const shares = sharesOf(arrow, rig);
  if (shares === null || base.shares === null) return base.form;
  const law = lawForm(shares, base.lawSd);
  return arrow.dragFrom === 'given'
    ? combined([
        [1, base.form],
        [1, law],
        [-1, lawForm(base.shares, base.lawSd)],
      ])
    : law;
}

/** How far one error follows another: the slope of the best straight line of `a` on `b`. */
export const regression = (a: ErrorForm, b: ErrorForm): number => covariance(a, b) / covariance(b, b);

const lawForm = (shares: Shares, lawSd: number): ErrorForm =>
  new Map(
    [...shares].map(([name, share]) => [
      `drag law:${name}`,
      (isShape(name) ? SHAPE_UNCERTAINTY : lawSd) * share,
    ]),
  );

/**
 * What the laws of all other terms must be uncertain by for the whole to be by `sd`; at least half of what they are without a
 * head.
 */
function lawSdOf(shares: Shares, sd: number): number {
  const squares = (of: (name: string) => boolean): number =>
    [...shares].reduce((sum, [name, share]) => sum + (of(name) ? share * share : 0), 0);
  const rest = squares((name) => !isShape(name));
  return Math.sqrt(Math.max(sd ** 2 - SHAPE_UNCERTAINTY ** 2 * squares(isShape), sd ** 2 / 4) / rest);
}

/** Relative standard uncertainty of an arrow's drag that the shape of its head brings by itself; 0 where no parts tell it. */
export function shapeDragSd(arrow: Arrow, rig: Pick<Rig, 'conditions' | 'launchSpeed'>): number {
  const shares = sharesOf(arrow, rig);
  if (shares === null) return 0;
  return SHAPE_UNCERTAINTY * Math.hypot(...[...shares].map(([name, share]) => (isShape(name) ? share : 0)));
}

function sharesOf(
  arrow: Arrow,
  { conditions: { air }, launchSpeed }: Pick<Rig, 'conditions' | 'launchSpeed'>,
): Shares | null {
  const { dragTerms, boundaryLayer, flying, parts } = arrow;
  const shape = parts === null ? 'assumed' : parts.point.shape;
  const terms = dragTerms?.(boundaryLayer, reynoldsNumber(air, launchSpeed, flying.diameter));
  if (terms === undefined) return null;
  const total = terms.reduce((sum, { coefficient }) => sum + coefficient, 0);
  return new Map(
    terms.map(({ name, coefficient }) => [name === 'point' ? `point ${shape}` : name, coefficient / total]),
  );
}
