import { type CantEffect, cantEffects, levelErrors } from '../../advice/lean/cant.ts';
import { drift } from '../../advice/lean/drift.ts';
import { leanFor } from '../../advice/lean/lean.ts';
import { leanVerdict } from '../../advice/lean/lean-verdict.ts';
import { curvedPart } from '../../calibration/sideways/curved-part.ts';
import { fitLateral } from '../../calibration/sideways/lateral-fit.ts';
import { isAlike, lateralEstimates, leanSpinLikeness } from '../../calibration/sideways/lateral-verdict.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { archerSpread, lateralMarks } from '../../setup/assemble/sideways-marks.ts';
import { anglesBothWays } from '../asked/angles.ts';
import { optionRanges } from '../asked/quantity.ts';
import type { CantFindings } from './findings.ts';
import { leanWords } from './lean-words.ts';
import { cantTable, cantText } from './text.ts';

export interface CantOptions extends AnswerOptions {
  readonly from: string;
  readonly to: string;
  readonly every: string;
  readonly most: string;
  readonly step: string;
}

export function runCant(io: Io, path: string, options: CantOptions): void {
  const session = openNamedFile(io, path, options);
  const ranges = optionRanges(options);
  const cants = anglesBothWays(
    { option: 'most', text: options.most },
    { option: 'step', text: options.step },
  );
  const { rig } = session.calibration;
  const marks = lateralMarks(session, options.uncalibrated ?? false);
  const fit = fitLateral(rig, marks);
  const lean = leanFor(rig, fit, ranges);
  const likeness = leanSpinLikeness(fit);
  const found: CantFindings = {
    session,
    ranges,
    effects: cantEffects(rig, cants, ranges),
    errors: levelErrors(rig, ranges),
    drift: drift(rig, ranges),
    fit,
    measured: marks.length === 0 ? null : curvedPart(rig, fit, ranges),
    causes: lateralEstimates(fit),
    leanSpinLikeness: likeness,
    leanOrSpin: isAlike(likeness),
    lean,
    verdict: leanVerdict(lean, fit, ranges, archerSpread(session)),
  };
  present(io, options, {
    text: () => cantText(found, io),
    json: () => json(found),
    table: () => cantTable(found),
  });
}

function json(found: CantFindings): object {
  const { session, effects, errors, fit, lean, verdict, measured } = found;
  return {
    title: session.title,
    calibrated: session.calibrated,
    zero_range_m: session.calibration.rig.zeroRange,
    effects: effects.map(({ cant, rows, rezeroed }) => ({
      cant_rad: cant,
      rows: rows.map(missJson),
      rezeroed: rezeroed.map(missJson),
    })),
    level_error: errors.map(({ range, lateralPerRadian, rezeroedPerRadian }) => ({
      range_m: range,
      lateral_m_per_rad: lateralPerRadian,
      rezeroed_m_per_rad: rezeroedPerRadian,
    })),
    drift: {
      range_m: found.ranges,
      gyroscopic_m: found.drift.map(({ gyroscopic }) => gyroscopic),
      magnus_ceiling_m: found.drift.map(({ shaftForceCeiling }) => shaftForceCeiling),
      coriolis_m: found.drift.map(({ coriolis }) => coriolis),
      measured_m: found.ranges.map((_, i) => measured?.[i]?.lateral ?? null),
      measured_sd_m: found.ranges.map((_, i) => measured?.[i]?.sd ?? null),
    },
    advice: {
      lean_rad: lean.lean,
      lean_sd_rad: lean.sd,
      turn_rad: lean.turn,
      bow_lean_rad: lean.bowLean,
      residual_max_m: lean.residualMax,
      now_m: lean.now,
      left_m: lean.left,
      closed_form_gyroscopic_rad: lean.closedForm?.gyroscopic ?? null,
      closed_form_magnus_ceiling_rad: lean.closedForm?.shaftForceCeiling ?? null,
      worth_doing: verdict.worthDoing,
      reason: leanWords(found),
      reason_code: verdict.reason,
      largest_shift_m: verdict.shift,
      largest_shift_range_m: verdict.at,
      arrow_sd_m: verdict.arrowSd,
      arrows_to_show: verdict.toShow?.arrows ?? null,
    },
    sideways: {
      groups: fit.residuals.length,
      chance: fit.chance,
      widening: fit.widening,
      launch_swing: fit.launch.kind,
      lean_and_spin_alike: found.leanSpinLikeness,
      causes: found.causes.map(({ name, value, sd, priorValue, priorSd, verdict: said }) => ({
        name,
        value,
        sd,
        prior_value: priorValue,
        prior_sd: priorSd,
        verdict: said,
      })),
      residuals: fit.residuals.map(({ mark, residual, curved, studentised }) => ({
        range_m: mark.range,
        lateral_m: mark.lateral,
        sd_m: mark.sd,
        curved_m: curved,
        residual_m: residual,
        studentised,
      })),
    },
  };
}

const missJson = ({ range, lateral, vertical }: CantEffect['rows'][number]): object => ({
  range_m: range,
  lateral_m: lateral,
  vertical_m: vertical,
});
