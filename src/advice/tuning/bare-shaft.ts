import type { Arrow } from '../../arrow/arrow.ts';
import { changedArrow } from '../../arrow/changed-arrow.ts';
import type { DragPoint } from '../../arrow/drag/drag-curve.ts';
import type { ArrowParts } from '../../arrow/parts/parts.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { si } from '../../quantities/quantity.ts';

/**
 * The arrow without its vanes, with their weight in tape where they were: mass, balance point and inertia stay. A head with
 * blades is replaced by a field point of its weight, as nobody may shoot one without vanes.
 *
 * @param baseDrag the coefficient that was given for the arrow, if one was; scaled by what the build-up says of both
 * @throws DomainError when the arrow's parts are not known
 */
export function bareShaft(arrow: Arrow, baseDrag: number | readonly DragPoint[] | undefined): Arrow {
  const { parts, flying } = arrow;
  if (parts === null)
    throw new DomainError('bare shaft', Number.NaN, 'an arrow with `arrow.parts` in the setup file');
  return changedArrow({
    base: arrow,
    baseDrag,
    parts: withoutVanes(parts),
    totals: { mass: flying.mass, balance: flying.balance, diameter: flying.diameter },
    choices: { sideForce: flying.sideForce, boundaryLayer: arrow.boundaryLayer },
  });
}

function withoutVanes({ vanes, others = [], point, ...parts }: ArrowParts): ArrowParts {
  const tape =
    vanes === undefined
      ? []
      : [
          {
            name: 'tape',
            mass: si<'kg'>(vanes.count * vanes.mass),
            fromNock: si<'m'>(vanes.fromNock + vanes.rootChord / 2),
          },
        ];
  const bladed = point.shape === 'fixed_blade' || point.blades !== undefined;
  return {
    ...parts,
    point: bladed ? { mass: point.mass, length: point.length, shape: 'field' } : point,
    others: [...others, ...tape],
  };
}
