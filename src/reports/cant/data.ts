import type { Reach } from '../../sight/reach.ts';
import { columnsOf, dataOf } from '../field.ts';
import { reachData } from '../reach-words.ts';
import type { Session } from '../session.ts';
import { causeFields, DRIFT_FIELDS, GROUP_FIELDS, LEAN_FIELDS, LEVEL_FIELDS, MISS_FIELDS } from './fields.ts';
import type { CantFindings } from './findings.ts';
import { verdictWords } from './words.ts';

/** The findings for programs. */
export const cantData = (session: Session, found: CantFindings, reach: Reach): object => ({
  title: session.title,
  calibrated: session.calibrated,
  zero_range_m: session.calibration.rig.zeroRange,
  ...reachData(reach),
  effects: found.effects.map(({ cant, costs }) => ({
    cant_rad: cant,
    rows: dataOf(
      MISS_FIELDS,
      costs.map(({ miss }) => miss),
    ),
    rezeroed: dataOf(
      MISS_FIELDS,
      costs.map(({ rezeroed }) => rezeroed),
    ),
  })),
  level_error: dataOf(LEVEL_FIELDS, found.levelErrors),
  drift: columnsOf(DRIFT_FIELDS, found.drift),
  advice: adviceData(session, found),
  sideways: sidewaysData(session, found),
});

function adviceData(session: Session, found: CantFindings): object {
  const { lean, verdict } = found;
  return {
    lean_rad: lean.lean,
    lean_sd_rad: lean.sd,
    turn_rad: lean.turn,
    bow_lean_rad: lean.bowLean,
    residual_max_m: lean.residualMax,
    ...columnsOf(LEAN_FIELDS, found.drift),
    closed_form_gyroscopic_rad: lean.closedForm?.gyroscopic ?? null,
    closed_form_magnus_ceiling_rad: lean.closedForm?.shaftForceCeiling ?? null,
    worth_doing: verdict.worthDoing,
    reason: verdictWords(session, found),
    reason_code: verdict.reason,
    largest_shift_m: verdict.shift,
    largest_shift_range_m: verdict.at,
    arrow_sd_m: verdict.arrowSd,
    arrows_to_show: verdict.toShow?.arrows ?? null,
    wind_alike_mps: lean.windAlike,
    could_be_wind: verdict.couldBeWind,
  };
}

const sidewaysData = (session: Session, { fit, causes, leanSpinLikeness }: CantFindings): object => ({
  groups: fit.residuals.length,
  chance: fit.chance,
  widening: fit.widening,
  launch_swing: fit.launch.kind,
  lean_and_spin_alike: leanSpinLikeness,
  causes: dataOf(causeFields(session), causes),
  crosswinds: fit.crosswinds.map(({ day, value, sd, priorSd, verdict }) => ({
    date: day,
    value_mps: value,
    sd_mps: sd,
    prior_sd_mps: priorSd,
    verdict,
  })),
  residuals: dataOf(GROUP_FIELDS, fit.residuals),
});
