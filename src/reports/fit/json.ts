import { findings } from '../../calibration/diagnose.ts';
import type { FitFindings } from './findings.ts';

/** The fit as one document, SI. */
export function fitJson({ session, marks, others, next, files }: FitFindings): object {
  const { calibration } = session;
  return {
    title: session.title,
    calibrated: session.calibrated,
    chi_squared: calibration.chiSquared,
    measurements: calibration.residuals.length,
    chance: calibration.chance,
    widening: calibration.widening,
    parameters: calibration.parameters.map((parameter) => ({
      name: parameter.name,
      unit: parameter.unit,
      value: parameter.value,
      sd: parameter.sd,
      prior_value: parameter.priorValue,
      prior_sd: parameter.priorSd,
      verdict: parameter.verdict,
    })),
    correlations: calibration.correlations,
    residuals: marks.map(({ residual, reading, predicted }) => ({
      range_m: residual.measurement.range,
      reading,
      predicted,
      residual: reading - predicted,
      on_target_m: residual.residual,
      on_target_sd_m: residual.measurement.sd,
      studentised: residual.studentised,
    })),
    others: others.map(({ measurement, residual, studentised }) => ({
      kind: measurement.kind,
      range_m: measurement.range,
      residual,
      sd: measurement.sd,
      studentised,
    })),
    findings: findings(calibration),
    next_range_m: next.range,
    rms_on_target_now_m: next.rmsNow,
    rms_on_target_after_m: next.rmsAfter,
    files,
  };
}
