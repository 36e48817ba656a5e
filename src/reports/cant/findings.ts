import type { CantEffect, LevelError } from '../../advice/lean/cant.ts';
import type { Drift } from '../../advice/lean/drift.ts';
import type { Lean } from '../../advice/lean/lean.ts';
import type { LeanVerdict } from '../../advice/lean/lean-verdict.ts';
import type { CurvedPart } from '../../calibration/sideways/curved-part.ts';
import type { LateralFit } from '../../calibration/sideways/lateral-fit.ts';
import type { LateralEstimate } from '../../calibration/sideways/lateral-verdict.ts';
import type { Metres } from '../../quantities/quantity.ts';
import type { Session } from '../session.ts';

/** Everything the command `cant` found. */
export interface CantFindings {
  readonly session: Session;
  readonly ranges: readonly Metres[];
  readonly effects: readonly CantEffect[];
  readonly errors: readonly LevelError[];
  readonly drift: readonly Drift[];
  readonly fit: LateralFit;
  /** Null when no group's left and right was given. */
  readonly measured: readonly CurvedPart[] | null;
  /** What the groups say about each cause of a sideways miss. */
  readonly causes: readonly LateralEstimate[];
  /** How alike a lean and the arrow's spin look in the groups, from -1 to 1; null when nothing is known of it. */
  readonly leanSpinLikeness: number | null;
  /** Whether they look so alike that only their sum is known. */
  readonly leanOrSpin: boolean;
  readonly lean: Lean;
  readonly verdict: LeanVerdict;
}
