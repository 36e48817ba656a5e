import { expect, it } from 'vitest';
import { openSetup } from '../../../src/setup/open.ts';
import { SetupError } from '../../../src/setup/problem.ts';
import { EXAMPLE } from './example-text.ts';

const FPS = 0.3048; // m/s, by definition
const GRAIN = 64.79891e-6; // kg, by definition

it('opens a setup from its text: the title of the text, the values in SI, and one residual a shot', () => {
  const { setup, title, assembly, calibration, calibrated } = openSetup(EXAMPLE, 'camp.yaml');
  expect(title).toBe(setup.title);
  expect(assembly.arrow.flying.mass).toBeCloseTo(452 * GRAIN, 12);
  expect(calibrated).toBe(true);
  expect(calibration.residuals).toHaveLength(setup.marks?.length ?? -1);
});

it('is called by the name of the file where the text has no title', () => {
  const untitled = EXAMPLE.replace(/^title:.*$/m, '');
  for (const name of ['camp.yaml', './camp.yaml', '/home/a b/bows/camp.yaml', 'C:\\bows\\camp.yaml'])
    expect(openSetup(untitled, name).title, name).toBe('camp.yaml');
  expect(openSetup(untitled, '-').title).toBe('-');
});

it('leaves aside what was shot when asked to: the speed is then the stated one', () => {
  const open = openSetup(EXAMPLE.replace(', measured_at: 3 ft', ''), 'camp.yaml', { uncalibrated: true });
  expect(open.calibrated).toBe(false);
  expect(open.calibration.residuals).toEqual([]);
  expect(open.calibration.rig.launchSpeed).toBeCloseTo(281 * FPS, 9);
});

it('takes overrides in place of what the text says', () => {
  const open = openSetup(EXAMPLE, 'camp.yaml', { overrides: [{ path: ['arrow', 'mass'], value: '470 gr' }] });
  expect(open.assembly.arrow.flying.mass).toBeCloseTo(470 * GRAIN, 12);
});

it('names the file in what it refuses', () => {
  expect(() => openSetup('arrow: 5', 'camp.yaml')).toThrow(SetupError);
  expect(() => openSetup('arrow: 5', 'camp.yaml')).toThrow(/camp\.yaml/);
});
