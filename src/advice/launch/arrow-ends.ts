import type { Arrow } from '../../arrow/arrow.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, si } from '../../quantities/quantity.ts';

/** How far the ends of the arrow lie from its balance point. */
export interface ArrowEnds {
  /** Tip of the point, ahead. */
  readonly ahead: Metres;
  /** Bottom of the nock groove, behind. */
  readonly behind: Metres;
}

/** @throws DomainError when the arrow's parts are not known */
export function arrowEnds({ flying, parts, length }: Arrow): ArrowEnds {
  if (parts === null || length === null)
    throw new DomainError('ends of the arrow', Number.NaN, 'an arrow with `arrow.parts` in the setup file');
  return { ahead: si(length + parts.point.length - flying.balance), behind: flying.balance };
}
