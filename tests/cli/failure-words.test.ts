import { describe, expect, it } from 'vitest';
import { FIT_NOT_CONVERGED } from '../../src/calibration/fit-not-converged.ts';
import { flagOf } from '../../src/cli/commands/flag.ts';
import { NumericalError } from '../../src/numerics/numerical-error.ts';
import { failureWords } from '../../src/reports/failure-words.ts';
import { NO_PIN, NO_ZERO } from '../../src/sight/no-pin.ts';
import { atTerminal } from './terminal.ts';

const said = (reason: string | undefined, code: 'not-converged' | 'too-many-evaluations' = 'not-converged') =>
  failureWords(new NumericalError(code, 'worded in any way', { at: 91.44, reason }), flagOf);

describe('what to do about a calculation without an answer', () => {
  it('follows from its reason, however the error is worded', () => {
    expect(said(NO_PIN)).toContain('no setting of the sight hits');
    expect(said(FIT_NOT_CONVERGED)).toContain('--uncalibrated');
    expect(said(NO_ZERO)).toContain('hits at the zero range, 100 yd (91 m)');
    expect(said(undefined)).toContain('a wrong unit');
  });
  it('of marks that no bow explains, which to look at first', () => {
    expect(said(FIT_NOT_CONVERGED)).toContain('first what was shot at 100 yd (91 m)');
    const nowhere = new NumericalError('not-converged', 'stuck', { reason: FIT_NOT_CONVERGED });
    expect(failureWords(nowhere, flagOf)).toContain('Check the marks; then speed, mass, drag');
  });
  it.each([
    ['', 'marks'],
    ['marks: [{ range: 20 yd, reading: 12 }, { range: 30 yd, reading: 16 }]', 'fit'],
  ])('a sight that cannot be zeroed is no fault of the marks: %s', async (marks, name) => {
    // 90 ft/s throw an arrow 252 ft at most, 84 yd, even without drag.
    const slow = `
launch: { speed: 90 fps }
bow: { peep_height: 3.5 in }
sight: { zero: 90 yd, peep_to_pin: 28 in, scale: { travel_per_unit: 1 mm, increases: down, at_zero: 40 } }
arrow: { mass: 520 gr, diameter: 0.344 in, length: 30 in, drag_coefficient: 2 }
${marks}
`;
    const { code, err } = await atTerminal([name, 'slow.yaml'], { 'slow.yaml': slow });
    expect(code).toBe(1);
    expect(err).toContain('No answer: no setting of the sight hits at the zero range, 90 yd (82 m).');
    expect(err).not.toContain('marks are of');
  });
  it('names the place where a flight stopped, in both units', () =>
    expect(said(undefined, 'too-many-evaluations')).toContain('100 yd (91 m)'));
  it('a range that no setting reaches keeps its code in JSON, and says the reason beside it', async () => {
    const { code, err } = await atTerminal([
      'wind',
      'examples/mountain-hunt/setup.yaml',
      '--from',
      '500yd',
      '--to',
      '500yd',
      '--json',
    ]);
    expect(code).toBe(1);
    expect(JSON.parse(err)).toMatchObject({ error: { code: 'not-converged', reason: 'no-pin', where: [] } });
  });
});
