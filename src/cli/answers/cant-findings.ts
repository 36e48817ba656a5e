import type { CantEffect, LevelError } from '../../advice/cant.ts';
import type { CurvedPart } from '../../advice/curved-part.ts';
import type { Drift } from '../../advice/drift.ts';
import type { LateralFit } from '../../advice/lateral-fit.ts';
import type { Lean } from '../../advice/lean.ts';
import type { LeanVerdict } from '../../advice/lean-verdict.ts';
import type { Metres } from '../../quantities/quantity.ts';
import type { Session } from '../open-setup.ts';

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
