import { describe, expect, it } from 'vitest';
import { findings } from '../../../src/calibration/diagnose.ts';
import { logEvidence, mixedVariance } from '../../../src/calibration/evidence.ts';
import { calibrate, estimateOf } from '../../../src/calibration/fit.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { leastSquares } from '../../../src/numerics/least-squares.ts';
import { assemble } from '../../../src/setup/assemble/assemble.ts';
import { isLayerOpen } from '../../../src/setup/assemble/open-layer.ts';
import { readSetup } from '../../../src/setup/read.ts';
import { problem, shotMarks, truth } from './invented-problem.ts';

const HALF = { value: 0.5, sd: 0.075 };
const fitted = (marks: readonly Measurement[]) => calibrate({ ...problem(marks), otherDrag: HALF });
const marksWith = (drag: number) =>
  shotMarks([20, 40, 60, 80], 3e-4, () => 0, { ...truth, drag_scale: drag });

describe('a drag that may be in either of two places', () => {
  it('is found where the marks put it, and the fit says how sure that is', () => {
    const half = fitted(marksWith(0.5));
    expect(half.dragPlace?.isOther).toBe(true);
    expect(half.dragPlace?.chance).toBeGreaterThan(0.95);
    expect(Math.abs(half.values.drag_scale - 0.5)).toBeLessThan(0.1 /* of the built-up drag */);
    const whole = fitted(marksWith(0.95));
    expect(whole.dragPlace).toMatchObject({ isOther: false });
    expect(findings(whole)).toContainEqual({
      kind: 'layer',
      isLaminar: false,
      chance: whole.dragPlace?.chance,
    });
  });

  it('without marks is as likely here as there, and its error holds both', () => {
    const found = fitted([]);
    expect(Math.abs((found.dragPlace?.chance ?? 0) - 0.5)).toBeLessThan(1e-6 /* of one */);
    // About 1: half the chance within 0.15 of it, half 0.5 away within 0.075.
    const expected = Math.sqrt(0.5 * 0.15 ** 2 + 0.5 * (0.075 ** 2 + 0.5 ** 2));
    expect(Math.abs(estimateOf(found, 'drag_scale').sd / expected - 1)).toBeLessThan(1e-6 /* relative */);
    expect(Math.abs(mixedVariance({ value: 1, sd: 0.15 }, HALF, 0.5) / expected ** 2 - 1)).toBeLessThan(
      1e-12 /* relative */,
    );
    expect(estimateOf(found, 'drag_scale').priorSd).toBe(
      Math.sqrt(mixedVariance({ value: 1, sd: 0.15 }, HALF, 0.5)),
    );
  });

  it('leaves an ordinary problem as it was', () => {
    const marks = marksWith(1);
    expect(calibrate(problem(marks)).dragPlace).toBeNull();
  });
});

it('the evidence of one value measured once is the normal density of the two sds together, but for its constant', () => {
  // Prior 1 ± 2, measured 4 ± 1.5: 4 - 1 = 3 with a variance of 2.25 + 4.
  const found = leastSquares(([x = 0]) => [(4 - x) / 1.5, (1 - x) / 2], [1]);
  if (found.outcome !== 'converged') expect.fail();
  const closed = -(3 ** 2) / (2 * 6.25) - Math.log(6.25) / 2 + Math.log(1.5);
  expect(Math.abs(logEvidence(found, [{ value: 1, sd: 2 }]) - closed)).toBeLessThan(
    1e-6 /* of a logarithm */,
  );
});

describe('the layer along a shaft is open', () => {
  const slim = `bow: { peep_height: 4.6 in }
arrow:
  diameter: 5.5 mm
  parts:
    shaft: { length: 28 in, inner_diameter: 4 mm, mass_per_length: 6.5 gpi }
    point: { mass: 110 gr, shape: bullet, length: 1 in }
    vanes: { count: 3, mass: 2 gr, root_chord: 45 mm, tip_chord: 20 mm, height: 8.5 mm }
launch: { speed: 190 fps }
sight: { peep_to_pin: 33 in }
`;
  const isOpen = (text: string) => {
    const setup = readSetup(text, 'slim.yaml');
    const { arrow, rig } = assemble(setup);
    return isLayerOpen(setup, arrow, rig);
  };
  it('for a slim arrow with a smooth point below a Reynolds number of 25 000', () =>
    expect(isOpen(slim)).toBe(true));
  it.each([
    ['the file says it', slim.replace('arrow:\n', 'arrow:\n  boundary_layer: laminar\n')],
    ['the point is a field point', slim.replace('shape: bullet', 'shape: field')],
    ['the shaft is thick', slim.replace('5.5 mm', '7 mm')],
    ['the arrow is fast', slim.replace('190 fps', '300 fps')],
    ['the drag was measured', slim.replace('arrow:\n', 'arrow:\n  drag_coefficient: 2\n')],
  ])('but not where %s', (_, text) => expect(isOpen(text)).toBe(false));
});
