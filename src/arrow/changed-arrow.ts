import { type Kilograms, type Metres, si } from '../quantities/quantity.ts';
import type { Arrow, ArrowChoices, ArrowTotals } from './arrow.ts';
import { buildArrow } from './build.ts';
import type { DragPoint } from './drag/drag-curve.ts';
import type { DragTerm } from './drag/drag-term.ts';
import { massProperties } from './parts/mass-properties.ts';
import type { ArrowParts } from './parts/parts.ts';
import { arrowLength, piecesOf } from './parts/pieces.ts';

/** What is known of an arrow that differs from a base arrow in some of its parts. */
export interface ArrowChange {
  readonly base: Arrow;
  /** The coefficient that was given for the base, if one was. */
  readonly baseDrag?: number | readonly DragPoint[] | undefined;
  /** All parts of the changed arrow. */
  readonly parts: ArrowParts;
  /** What was measured on the changed arrow itself. */
  readonly totals?: ArrowTotals | undefined;
  readonly choices?: ArrowChoices | undefined;
}

/**
 * A changed arrow: what the base weighed beyond the sum of its parts (glue, tolerances) stays, and only the parts' change
 * is added.
 *
 *   m′ = m + (Σm)′ − Σm,   x′ = [m x + (Σm x)′ − Σm x]/m′
 *
 * A coefficient given for the base is scaled by what the build-up says of both arrows. Totals measured on the changed arrow win.
 *
 * @throws DomainError as `buildArrow`
 */
export function changedArrow({ base, baseDrag, parts, totals = {}, choices }: ArrowChange): Arrow {
  const { diameter = parts.shaft.outerDiameter, dragCoefficient } = totals;
  const resized: ArrowParts = { ...parts, shaft: { ...parts.shaft, outerDiameter: diameter } };
  const carried = carriedTotals(base, resized);
  const listed = buildArrow({ parts: resized, totals: { ...carried, ...measuredOf(totals) }, choices });
  const drag = dragCoefficient ?? scaledDrag(baseDrag, base, listed);
  return drag === undefined
    ? listed
    : buildArrow({
        parts: resized,
        totals: { ...carried, ...measuredOf(totals), dragCoefficient: drag },
        choices,
      });
}

/** The totals that were measured, without keys that hold nothing: they must not hide the carried ones. */
const measuredOf = ({ mass, balance, length }: ArrowTotals): ArrowTotals => ({
  ...(mass === undefined ? {} : { mass }),
  ...(balance === undefined ? {} : { balance }),
  ...(length === undefined ? {} : { length }),
});

function carriedTotals(
  base: Arrow,
  parts: ArrowParts,
): { mass?: Kilograms; balance?: Metres; length?: Metres } {
  if (base.parts === null) return {};
  const [before, after] = [massProperties(base.pieces), massProperties(piecesOf(parts))];
  const { mass: weighed, balance } = base.flying;
  const mass = weighed + after.mass - before.mass;
  const moment = weighed * balance + after.mass * after.balance - before.mass * before.balance;
  const longer = arrowLength(parts) - arrowLength(base.parts);
  return {
    mass: si(mass),
    balance: si(moment / mass),
    ...(base.length === null ? {} : { length: si(base.length + longer) }),
  };
}

/** Reynolds number at which one coefficient stands for all speeds: 85 m/s, 6 mm. */
const USUAL_REYNOLDS = 35_000;

function scaledDrag(
  given: number | readonly DragPoint[] | undefined,
  base: Arrow,
  changed: Arrow,
): number | readonly DragPoint[] | undefined {
  if (given === undefined) return undefined;
  const { dragTerms: before, boundaryLayer: layerBefore } = base;
  const { dragTerms: after, boundaryLayer: layerAfter } = changed;
  if (before === null || after === null) return given;
  const ratio = (reynolds: number): number =>
    total(after(layerAfter, reynolds)) / total(before(layerBefore, reynolds));
  if (typeof given === 'number') return given * ratio(USUAL_REYNOLDS);
  return given.map(({ reynolds, coefficient }) => ({ reynolds, coefficient: coefficient * ratio(reynolds) }));
}

const total = (terms: readonly DragTerm[]): number =>
  terms.reduce((sum, { coefficient }) => sum + coefficient, 0);
