import type { CalibrationProblem } from '../../../src/calibration/fit.ts';
import type { Measurement, ShotMark } from '../../../src/calibration/measurement.ts';
import {
  namedValues,
  type ParameterValues,
  type Priors,
  withParameters,
} from '../../../src/calibration/parameters.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';

/** What a ruler and a chronograph leave uncertain; the place of the scale is left to the marks. */
export const priors: Priors = {
  launch_speed: { value: inventedRig.launchSpeed, sd: 0.4572 },
  drag_scale: { value: 1, sd: 0.15 },
  peep_height: { value: inventedRig.geometry.peepHeight, sd: 0.00254 },
  scale_ratio: { value: 1, sd: 0.009 },
  scale_offset: { value: 0, sd: 500 },
};

/** A bow that differs from its measurements by about one standard error in everything. */
export const truth: ParameterValues = namedValues([85.8, 0.9, 0.119, 1.007, 0.35]);

/** Marks as that bow would give them at these yards, each moved by `noise(i)` standard errors of `sdPerRange` times the range. */
export function shotMarks(
  ranges: readonly number[],
  sdPerRange: number,
  noise: (i: number) => number = () => 0,
  real: ParameterValues = truth,
): readonly Measurement[] {
  const rig = withParameters(inventedRig, real);
  return marksFor(rig, ranges.map(yards)).marks.map((mark, i) => {
    const sd = sdPerRange * mark.range;
    return {
      kind: 'mark',
      range: mark.range,
      reading: mark.reading ?? 0,
      vertical: noise(i) * sd,
      sd: si(sd),
      cant: si(0),
      day: null,
    };
  });
}

/** What the scale of the invented bow reads at a range, m. */
export const rightReading = (range: number): number =>
  marksFor(inventedRig, [range]).marks[0]?.reading ?? Number.NaN;

/** A mark of a range (m) as that bow has it, but for what is given. */
export const markAt = (range: number, more: Partial<ShotMark> = {}): ShotMark => ({
  kind: 'mark',
  range: si(range),
  reading: more.reading ?? rightReading(range),
  vertical: 0,
  sd: si(0.02),
  cant: si(0),
  day: null,
  ...more,
});

/** A mark of a range (m) that no arrow gets to, so that the scale has no reading for it. */
export const beyond = (range: number): ShotMark => markAt(range, { reading: 30, sd: si(1) });

/** Days that all are alike. */
export const NO_DAYS = { speed: 0, density: 0, headWind: 0 };

export const problem = (measurements: readonly Measurement[]): CalibrationProblem => ({
  rig: inventedRig,
  priors,
  measurements,
  days: NO_DAYS,
});
