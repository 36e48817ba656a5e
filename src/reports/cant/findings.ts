import type { CantEffect, LevelError } from '../../advice/lean/cant.ts';
import type { Drift } from '../../advice/lean/drift.ts';
import type { Lean } from '../../advice/lean/lean.ts';
import type { LeanVerdict } from '../../advice/lean/lean-verdict.ts';
import type { CurvedPart } from '../../calibration/sideways/curved-part.ts';
import type { LateralFit } from '../../calibration/sideways/lateral-fit.ts';
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
  readonly lean: Lean;
  readonly verdict: LeanVerdict;
}
