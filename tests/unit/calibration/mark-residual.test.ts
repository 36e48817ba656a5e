import { expect, it } from 'vitest';
import { calibrate } from '../../../src/calibration/fit.ts';
import { markResiduals, pencilResiduals } from '../../../src/calibration/mark-residual.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { flyer } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { travelAt } from '../../../src/sight/scale.ts';
import { impact } from '../../../src/sight/zero.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { NO_DAYS, shotMarks } from './invented-problem.ts';

const scale = { travelPerUnit: 0.001, direction: 1, atZero: 12.4 } as const;

const MISSED: Measurement = {
  kind: 'mark',
  range: si(yards(60)),
  reading: 31,
  vertical: 0.05,
  sd: si(0.05),
  cant: si(0),
  day: null,
};

/** Priors so narrow that the fit leaves the rig as it is: its own flight is then what the residual is measured against. */
const certain = (rig: Rig, mark: Measurement = MISSED) =>
  calibrate({
    rig,
    priors: {
      launch_speed: { value: rig.launchSpeed, sd: 1e-7 },
      drag_scale: { value: 1, sd: 1e-9 },
      peep_height: { value: rig.geometry.peepHeight, sd: 1e-9 },
      scale_ratio: { value: 1, sd: 1e-9 },
      scale_offset: { value: 0, sd: 1e-9 },
    },
    measurements: [mark, { kind: 'speed', range: si(yards(10)), speed: si(80), sd: si(1), day: null }],
    days: NO_DAYS,
  });

it.each([1, -1] as const)(
  'the sight set to the predicted reading hits where the group was, numbers growing the way %s',
  (direction) => {
    const rig: Rig = { ...inventedRig, scale: { ...scale, direction, atZero: direction === 1 ? 12.4 : 50 } };
    const fitted = certain(rig);
    const [found, ...others] = markResiduals(fitted);
    expect(others).toEqual([]);
    if (found === undefined || rig.scale === null) throw new RangeError('one mark has one residual');
    const zero = marksFor(rig, [rig.zeroRange]).zero;
    const down = zero.down + travelAt(rig.scale, found.predicted);
    const { height } = impact(flyer(rig.conditions), rig, { ...zero, down }, yards(60));
    expect(Math.abs(height - 0.05)).toBeLessThan(
      2e-3 /* m: the hit moves with travel by a straight line to 1 % of 0.2 m */,
    );
    expect(found.reading).toBe(31);
  },
);

it('a sight without a scale has no readings to be wrong by', () => {
  expect(markResiduals({ ...certain(inventedRig), rig: { ...inventedRig, scale: null } })).toEqual([]);
});

it('a mark that hit where it was aimed should have read what it read', () => {
  const [mark] = shotMarks([60], 0.001, () => 0, certain(inventedRig).values);
  if (mark === undefined) throw new RangeError('one range has one mark');
  const [found] = markResiduals(certain(inventedRig, mark));
  if (found === undefined) throw new RangeError('one mark has one residual');
  expect(Math.abs(found.predicted - found.reading)).toBeLessThan(
    1e-4 /* units of the scale: 0.1 um of travel */,
  );
});

it('a line on a strip is predicted where the pin would have hit, as far along as the strip goes for it', () => {
  const right = marksFor(inventedRig, [yards(60)]).marks[0]?.travel ?? Number.NaN;
  // Drawn 2 mm too far down a strip that goes 1.5 times as far, of a group on the aim.
  const { reading: _, ...group } = { ...MISSED, reading: 0, vertical: 0 };
  const line: Measurement = { ...group, kind: 'pencil', onTape: 1.5 * right + 2e-3, lineAt: null };
  const fit = certain(inventedRig);
  const strip = calibrate({
    ...fit.problem,
    priors: { ...fit.problem.priors, tape_ratio: { value: 1.5, sd: 1e-9 } },
    measurements: [...fit.problem.measurements, line],
  });
  const [found, ...others] = pencilResiduals(strip);
  expect(others).toEqual([]);
  expect(found?.onTape).toBe(line.onTape);
  expect(Math.abs(Number(found?.predicted) - 1.5 * right)).toBeLessThan(
    2e-5 /* m: straight in 2 mm to a hundredth */,
  );
  expect(found?.residual.measurement).toBe(line);
  expect(markResiduals(strip)).toHaveLength(1);
  expect(pencilResiduals(fit)).toEqual([]);
});
