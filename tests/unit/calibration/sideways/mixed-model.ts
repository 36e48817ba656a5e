import type {
  LateralMark,
  LateralPriors,
  LateralUnknown,
} from '../../../../src/calibration/sideways/lateral-mark.ts';
import { LATERAL_CAUSES, predictLateral } from '../../../../src/calibration/sideways/lateral-model.ts';
import { launchSwing } from '../../../../src/calibration/sideways/launch-swing.ts';
import { at } from '../../../../src/numerics/at.ts';
import { inverseSymmetric, times } from '../../../../src/numerics/linear-algebra.ts';
import { spinningRig } from '../../advice/invented-bow.ts';

/**
 * The same fit in another way: the wind of every day is an unknown like the others, with the wind's own standard deviation
 * before, and the errors of the groups have nothing in common (Henderson's mixed-model equations).
 */
export function mixedModel(marks: readonly LateralMark[], priors: LateralPriors, isSwinging: boolean) {
  const days = [...new Set(marks.map(({ day }) => day))];
  const swing = launchSwing(spinningRig);
  const unknowns: readonly LateralUnknown[] = isSwinging
    ? [...LATERAL_CAUSES, 'tail_left', 'turning']
    : LATERAL_CAUSES;
  const before = [
    ...unknowns.map((name) => priors[name]),
    ...days.map(() => ({ value: 0, sd: priors.crosswindSd })),
  ];
  const predicted = predictLateral(spinningRig, marks);
  const rows = predicted.map(({ slopes, perCrosswind }, i) => {
    const { range, cant, day } = at(marks, i);
    const flown = range - spinningRig.geometry.freeFlight;
    const start = isSwinging ? [swing.tailLeft(flown), swing.turning(flown)] : [];
    return [
      ...slopes,
      ...start.map((shift) => Math.cos(cant) * shift),
      ...days.map((one) => (one === day ? perCrosswind : 0)),
    ];
  });
  const sds = marks.map(({ sd, cantSd }, i) => Math.hypot(sd, at(at(rows, i), 2) * cantSd));
  const seen = marks.map(({ lateral }, i) => lateral - at(predicted, i).lateral);
  const normal = before.map(({ sd }, j) =>
    before.map((_, k) =>
      rows.reduce(
        (sum, row, i) => sum + (at(row, j) * at(row, k)) / at(sds, i) ** 2,
        j === k ? 1 / sd ** 2 : 0,
      ),
    ),
  );
  const right = before.map(({ value, sd }, j) =>
    rows.reduce((sum, row, i) => sum + (at(row, j) * at(seen, i)) / at(sds, i) ** 2, value / sd ** 2),
  );
  const covariance = inverseSymmetric(normal);
  const values = times(covariance, right);
  const left = seen.map((value, i) => value - at(times([at(rows, i)], values), 0));
  const chiSquared =
    left.reduce((sum, value, i) => sum + (value / at(sds, i)) ** 2, 0) +
    before.reduce((sum, { value, sd }, j) => sum + ((at(values, j) - value) / sd) ** 2, 0);
  return { days, unknowns, before, rows, sds, seen, normal, covariance, values, left, chiSquared };
}
