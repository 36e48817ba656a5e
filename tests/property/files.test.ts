import { expect, it } from 'vitest';
import { openSetup } from '../../src/setup/open.ts';
import { randomFile } from '../unit/calibration/random-file.ts';

it('no ordinary file of 200 is refused by the fit, and every error is a number', () => {
  for (let i = 0; i < 200; i += 1) {
    const { calibration } = openSetup(randomFile(77, i), 'random.yaml');
    for (const { sd } of calibration.parameters) expect(sd).toBeGreaterThan(0);
    expect(calibration.widening).toBeGreaterThanOrEqual(1);
    expect(calibration.widening).toBeLessThan(5);
  }
});
