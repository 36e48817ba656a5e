import {
  type CantEffect,
  cantEffects,
  type LevelError,
  levelErrors,
  type Miss,
} from '../../advice/lean/cant.ts';
import { type Drift, drift } from '../../advice/lean/drift.ts';
import { type Lean, leanFor } from '../../advice/lean/lean.ts';
import { type LeanVerdict, leanVerdict } from '../../advice/lean/lean-verdict.ts';
import { type CurvedPart, curvedPart } from '../../calibration/sideways/curved-part.ts';
import { fitLateral, type LateralFit } from '../../calibration/sideways/lateral-fit.ts';
import {
  isAlike,
  type LateralEstimate,
  lateralEstimates,
  leanSpinLikeness,
} from '../../calibration/sideways/lateral-verdict.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { archerSpread } from '../../setup/assemble/archer-spread.ts';
import { defaultOf } from '../../setup/assemble/defaults.ts';
import { lateralMarks, lateralPriors } from '../../setup/assemble/sideways-marks.ts';
import type { OpenSetup } from '../../setup/open.ts';

/** What one cant costs at one range. */
export interface CantCost extends Pick<CantEffect, 'cant'> {
  /** Sighted in as held, then turned by the cant without noticing. */
  readonly miss: Miss;
  /** The same cant held always, windage and height set again at the zero range. */
  readonly rezeroed: Miss;
}

/** One cant, at every range. */
export interface CantCosts extends Pick<CantEffect, 'cant'> {
  readonly costs: readonly CantCost[];
}

/** What moves the arrow sideways at one range, right positive. */
export interface DriftRow extends Drift {
  /** What the groups say of the curved part; null when none was measured. */
  readonly measured: CurvedPart | null;
  /** As things are, and with the lean, each with windage set at the zero range. */
  readonly now: Metres;
  readonly left: Metres;
}

/** What the groups say about one cause of a sideways miss. */
export interface CauseFound extends LateralEstimate {
  /** Whether anything was known of it before a group was shot. */
  readonly wasKnown: boolean;
}

/** A length turned by an angle: its two ends stand so far from where they stood against each other. */
export interface Turned {
  readonly length: Metres;
  readonly offset: Metres;
}

/** What a lean costs, what the arrow drifts, and whether to turn anything. */
export interface CantFindings {
  readonly effects: readonly CantCosts[];
  readonly levelErrors: readonly LevelError[];
  readonly drift: readonly DriftRow[];
  readonly fit: LateralFit;
  readonly causes: readonly CauseFound[];
  /** How alike a lean and the arrow's spin look in the groups, from -1 to 1; null when nothing is known of it. */
  readonly leanSpinLikeness: number | null;
  /** Whether they look so alike that only their sum is known. */
  readonly leanOrSpin: boolean;
  /** Whether a wind was taken off the groups. */
  readonly isWindTakenOff: boolean;
  readonly lean: Lean;
  /** Whether the arrow curves at all, over the span, as things are. */
  readonly isCurved: boolean;
  /** The turn of the lean as something to measure: over the sight's travel, and over the bow's level. */
  readonly sightTurn: Turned;
  readonly levelTurn: Turned;
  readonly verdict: LeanVerdict;
  /** Standard uncertainty of the verdict's shift. */
  readonly shiftSd: Metres;
  /** Whether anybody would shoot as many arrows as would show the shift. */
  readonly isShowable: boolean;
}

/** A shift below this is none, m. */
const NO_SHIFT = 1e-6;

/** Nobody shoots more arrows than this to settle a question. */
const MOST_ARROWS_TO_ASK_FOR = 1000;

export interface CantQuestions {
  readonly ranges: readonly Metres[];
  /** rad, clockwise positive */
  readonly cants: readonly number[];
}

export function cantFindings(opened: OpenSetup, { ranges, cants }: CantQuestions): CantFindings {
  const { setup, calibration, uncalibrated } = opened;
  const { rig } = calibration;
  const fit = fitLateral(
    rig,
    lateralMarks({ setup: opened.setup, days: opened.assembly.days }, uncalibrated),
    lateralPriors(opened),
  );
  const lean = leanFor(rig, fit, ranges);
  const verdict = leanVerdict(lean, fit, ranges, archerSpread(opened));
  const likeness = leanSpinLikeness(fit);
  const { wind } = rig.conditions;
  const { sight } = setup;
  return {
    effects: cantEffects(rig, cants, ranges).map(costsOf),
    levelErrors: levelErrors(rig, ranges),
    drift: driftRows(opened, { ranges, fit, lean }),
    fit,
    causes: lateralEstimates(fit).map((cause) => ({ ...cause, wasKnown: cause.name !== 'windage' })),
    leanSpinLikeness: likeness,
    leanOrSpin: isAlike(likeness),
    isWindTakenOff: wind.across !== 0 || wind.tail !== 0,
    lean,
    isCurved: Math.abs(verdict.shift) >= NO_SHIFT,
    sightTurn: turnedOver(sight.travel_length ?? defaultOf('sight.travel_length'), lean.turn),
    levelTurn: turnedOver(sight.level_length ?? defaultOf('sight.level_length'), lean.bowLean),
    verdict,
    shiftSd: si(Math.abs(verdict.shift) / verdict.significance),
    isShowable: verdict.toShow !== null && verdict.toShow.arrows <= MOST_ARROWS_TO_ASK_FOR,
  };
}

const costsOf = ({ cant, rows, rezeroed }: CantEffect): CantCosts => ({
  cant,
  costs: rows.map((miss, i) => ({ cant, miss, rezeroed: at(rezeroed, i) })),
});

function driftRows(
  { calibration: { rig } }: OpenSetup,
  {
    ranges,
    fit,
    lean,
  }: { readonly ranges: readonly Metres[]; readonly fit: LateralFit; readonly lean: Lean },
): readonly DriftRow[] {
  const measured = fit.residuals.length === 0 ? null : curvedPart(rig, fit, ranges);
  return drift(rig, ranges).map((row, i) => ({
    ...row,
    measured: measured === null ? null : at(measured, i),
    now: at(lean.now, i),
    left: at(lean.left, i),
  }));
}

const turnedOver = (length: Metres, angle: number): Turned => ({
  length,
  offset: si(Math.abs(Math.tan(angle)) * length),
});
