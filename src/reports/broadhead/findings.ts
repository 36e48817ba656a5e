import { shapeDragSd } from '../../advice/builds/drag-errors.ts';
import { type BroadheadAnswer, broadheadAnswers } from '../../advice/launch/broadhead.ts';
import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import type { Arrow } from '../../arrow/arrow.ts';
import { staticMarginSd } from '../../arrow/lift/static-margin.ts';
import { withPoint } from '../../arrow/parts/other-parts.ts';
import type { ArrowParts, Blades } from '../../arrow/parts/parts.ts';
import type { Launch } from '../../flight/launch.ts';
import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../../quantities/quantity.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { changedBuild, conditionsWith, requirePointFirst } from '../changed-build.ts';

export interface BroadheadAsked {
  /** Of the setup's arrow. */
  readonly parts: ArrowParts;
  /** Of the broadhead. */
  readonly blades: Blades;
  readonly launch: Launch;
  /** By which the tail stands off in a bad launch. */
  readonly angle: Radians;
  /** Of the nock, across, in a bad launch. */
  readonly nockSpeed: MetresPerSecond;
  /** Rising, beyond the launch. */
  readonly ranges: readonly Metres[];
}

/** An arrow with one head, and how far behind its balance point the air takes hold. */
export interface Headed {
  readonly arrow: Arrow;
  readonly staticMargin: Metres;
  /** Standard uncertainty of it. */
  readonly marginSd: Metres;
  /** Over the arrow's length, groove to the end of the shaft. */
  readonly marginShare: number;
  /** The margin is too small to trust: see `LEAST_MARGIN`. */
  readonly tooSmall: boolean;
}

/** Broadhead against field point from one bow. */
export interface BroadheadFindings extends BroadheadAsked {
  readonly field: Headed;
  readonly broadhead: Headed;
  /** The clean one first. */
  readonly starts: readonly BroadheadAnswer[];
  /** Whether the broadhead of a clean launch hits high at the farthest range, though it has more drag. */
  readonly isHighWhenClean: boolean;
}

/** @throws QuestionError for an arrow that would not fly point first; DomainError for one that is not told by its parts */
export function broadheadFindings(opened: OpenSetup, asked: BroadheadAsked): BroadheadFindings {
  const { parts, blades, launch, angle, nockSpeed, ranges } = asked;
  const own = opened.assembly.arrow;
  const isBladed = parts.point.shape === 'fixed_blade';
  const other = changedBuild(
    opened,
    isBladed ? withPoint(parts, 'field') : withPoint(parts, 'fixed_blade', blades),
  );
  const [field, broadhead] = isBladed ? [other, own] : [own, other];
  for (const arrow of [field, broadhead]) requirePointFirst(arrow, 'broadhead');
  const { rig } = opened.calibration;
  const shot = (arrow: Arrow) => ({
    conditions: conditionsWith(opened, arrow),
    launch,
    shapeDragSd: shapeDragSd(arrow, rig),
  });
  const start = { angle, rate: si<'rad/s'>(nockSpeed / own.flying.balance) };
  const starts = broadheadAnswers(shot(field), shot(broadhead), start, ranges);
  const clean = at(starts, 0).misses;
  return {
    ...asked,
    field: headed(field),
    broadhead: headed(broadhead),
    starts,
    isHighWhenClean: at(clean, clean.length - 1).high > 0,
  };
}

function headed(arrow: Arrow): Headed {
  const { staticMargin, length } = arrow;
  if (staticMargin === null || length === null)
    throw new DomainError('static margin', Number.NaN, 'an arrow with `arrow.parts` in the setup file');
  const marginShare = staticMargin / length;
  const marginSd = staticMarginSd(arrow.flying);
  if (marginSd === null) throw new DomainError('static margin', Number.NaN, 'an arrow told by its parts');
  return { arrow, staticMargin, marginSd, marginShare, tooSmall: marginShare < LEAST_MARGIN };
}
