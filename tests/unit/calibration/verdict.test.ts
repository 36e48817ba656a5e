import { describe, expect, it } from 'vitest';
import {
  besideOf,
  namedValues,
  PARAMETER_UNITS,
  PARAMETERS,
  type Priors,
  parameterIn,
  parametersOf,
  priorOf,
  TRAVEL_SCALE,
  withParameters,
} from '../../../src/calibration/parameters.ts';
import { estimates, verdictOf } from '../../../src/calibration/verdict.ts';
import { at } from '../../../src/numerics/at.ts';
import { inventedRig } from '../sight/invented-rig.ts';

describe('a verdict', () => {
  it('is measured where half of what was open is left, or less', () => {
    expect(verdictOf(0.5, 0.5)).toBe('measured');
    expect(verdictOf(0.51, 0.5)).toBe('not separable');
    expect(verdictOf(0.51, 0.51)).toBe('mostly prior');
  });
});

describe('estimates', () => {
  const priors: Priors = {
    launch_speed: { value: 85, sd: 2 },
    drag_scale: { value: 1, sd: 0.2 },
    peep_height: { value: 0.12, sd: 0.01 },
    scale_ratio: { value: 1, sd: 0.1 },
    scale_offset: { value: 0, sd: 500, yardstick: 2 },
  };
  // Two measurements: one of the speed with the drag, each 20 times as sure as what was known, and one of the place of the scale.
  const jacobian = [
    [10, 100, 0, 0, 0],
    [0, 0, 0, 1, 1],
    // What was known is no measurement.
    [0, 0, 1e6, 1e6, 0],
  ];
  // Errors of speed and drag that hang together by -0.95, and by less with the others.
  const covariance = [
    [1.8 ** 2, -0.95 * 1.8 * 0.19, 0.5 * 1.8 * 0.009, 0, 0],
    [-0.95 * 1.8 * 0.19, 0.19 ** 2, 0, 0, 0],
    [0.5 * 1.8 * 0.009, 0, 0.009 ** 2, 0, 0],
    [0, 0, 0, 0.04 ** 2, 0.6 * 0.04 * 0.9],
    [0, 0, 0, 0.6 * 0.04 * 0.9, 0.9 ** 2],
  ];
  const parameters = [84, 1.1, 0.121, 0.99, 0.4];
  const found = () => estimates({ parameters, jacobian, covariance }, priors, 2, 1.5);

  it('have their values, units and errors, wider by the scatter', () => {
    for (const [i, estimate] of found().entries()) {
      const name = at(PARAMETERS, i);
      expect(estimate).toMatchObject({ name, value: at(parameters, i), unit: PARAMETER_UNITS[name] });
      expect(estimate.sd).toBeCloseTo(1.5 * Math.sqrt(at(at(covariance, i), i)), 12);
      expect([estimate.priorValue, estimate.priorSd]).toEqual([priors[name]?.value, priors[name]?.sd]);
    }
    expect(found().map(({ unit }) => unit)).toEqual(['m/s', '1', 'm', '1', 'scale units']);
  });

  it('are not separable where the marks would tell either alone, from the one that they hang together with most', () => {
    expect(found().map(({ verdict }) => verdict)).toEqual([
      'not separable',
      'not separable',
      'mostly prior',
      'measured',
      'measured',
    ]);
    expect(found().map(({ tiedTo }) => tiedTo)).toEqual(['drag_scale', 'launch_speed', null, null, null]);
  });

  it('hang together by their correlation, whatever their units', () => {
    // 0.9 with the peep's height, a number much smaller than -0.8 with the place of the scale.
    const other = covariance.map((row) => [...row]);
    const set = (i: number, j: number, value: number) => {
      at(other, i)[j] = value;
      at(other, j)[i] = value;
    };
    set(0, 1, 0);
    set(0, 2, 0.9 * 1.8 * 0.009);
    set(0, 4, -0.8 * 1.8 * 0.9);
    const [speed] = estimates({ parameters, jacobian, covariance: other }, priors, 2, 1);
    expect(speed?.tiedTo).toBe('peep_height');
    // And -0.85 with the place of the scale is more than 0.82 with the peep's height.
    set(0, 2, 0.82 * 1.8 * 0.009);
    set(0, 4, -0.85 * 1.8 * 0.9);
    expect(estimates({ parameters, jacobian, covariance: other }, priors, 2, 1)[0]?.tiedTo).toBe(
      'scale_offset',
    );
  });

  it('would be half as sure alone where a measurement tells three times what was known: 1/√(1 + 3)', () => {
    const alone = (times: number) => {
      const row = [Math.sqrt(times) / 2, 0, 0, 0, 0];
      return estimates({ parameters, jacobian: [row], covariance }, priors, 1, 1)[0]?.verdict;
    };
    expect(alone(3.01)).toBe('not separable');
    expect(alone(2.99)).toBe('mostly prior');
  });
});

describe('parameters', () => {
  const list = [80, 1.2, 0.11, 0.98, 0.3];
  it('further than the five take part where something is known of them', () => {
    const priors: Priors = {
      ...Object.fromEntries(PARAMETERS.map((name) => [name, { value: 1, sd: 1 }])),
    } as never;
    expect(parametersOf(priors)).toEqual(PARAMETERS);
    const more = { ...priors, tape_ratio: { value: 1.5, sd: 0.1 } };
    expect(parametersOf(more)).toEqual([...PARAMETERS, 'tape_ratio']);
    expect(priorOf(more, 'tape_ratio').value).toBe(1.5);
    expect(() => priorOf(more, 'speed_per_degree')).toThrow('no prior of speed_per_degree');
  });
  it('are a list or named values', () => {
    expect(namedValues(list)).toEqual({
      launch_speed: 80,
      drag_scale: 1.2,
      peep_height: 0.11,
      scale_ratio: 0.98,
      scale_offset: 0.3,
    });
    const names = [...PARAMETERS, 'tape_ratio'] as const;
    const values = namedValues([...list, 1.5], names);
    expect(parameterIn(values, 'tape_ratio')).toBe(1.5);
    expect(() => parameterIn(values, 'speed_per_degree')).toThrow('no value of speed_per_degree');
    expect(() => namedValues(list, names)).toThrow('expected 6 parameters, got 5');
    expect(() => namedValues(list.slice(1))).toThrow('expected 5 parameters, got 4');
  });
  it('change a rig as they say', () => {
    const rig = withParameters(inventedRig, namedValues(list));
    expect([rig.launchSpeed, rig.conditions.arrow.dragScale, rig.geometry.peepHeight]).toEqual([
      80, 1.2, 0.11,
    ]);
    expect(rig.scale?.travelPerUnit).toBeCloseTo(0.98e-3, 15 /* m */);
    expect(rig.scale?.atZero).toBeCloseTo(12.7, 12 /* numbers */);
    expect(rig.scale?.direction).toBe(1);
  });
  it('of a sight without numbers count metres of travel', () => {
    expect(TRAVEL_SCALE).toEqual({ travelPerUnit: 1, direction: 1, atZero: 0 });
    expect(withParameters({ ...inventedRig, scale: null }, namedValues(list)).scale).toEqual({
      travelPerUnit: 0.98,
      direction: 1,
      atZero: 0.3,
    });
  });
  it('say what a shot hangs on besides, and where they say nothing that it hangs on nothing', () => {
    expect(besideOf({})).toEqual({ perDegree: 0, tapeRatio: 1 });
    expect(besideOf({ speed_per_degree: 0.2, tape_ratio: 1.5 })).toEqual({ perDegree: 0.2, tapeRatio: 1.5 });
  });
});
