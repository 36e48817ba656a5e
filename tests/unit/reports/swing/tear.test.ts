import { expect, it } from 'vitest';
import { ask } from '../../../../src/reports/ask.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { huntingSetup } from '../../../reference/hunting-setup.ts';

const setup = openSetup(huntingSetup({}), 'setup.yaml');
const DEGREE = Math.PI / 180;

it('a tear of 0.4 in to the left at 6 ft is 0.9 degrees, or 1.15 ft/s of nock travel (an independent program)', async () => {
  const { data, blocks } = await ask('swing', setup, { tear: '0.4 in left', paper: '6 ft', to: '40 yd' });
  const { tear } = data as { tear: { if_angle_rad: number; if_nock_travel_mps: number } };
  // 0.4 in over 0.425 in a degree, and over 0.523 in a rad/s with the nock 17.93 in behind the balance point
  expect(Math.abs(tear.if_angle_rad / DEGREE - 0.94)).toBeLessThan(0.05 /* deg: a slightly other arrow */);
  expect(Math.abs(tear.if_nock_travel_mps / 0.3048 - 1.14)).toBeLessThan(
    0.08 /* ft/s: a slightly other arrow */,
  );
  expect(data).toMatchObject({
    start_angle_rad: tear.if_angle_rad,
    nock_travel_mps: tear.if_nock_travel_mps,
  });
  expect(blocks[0]).toMatchObject({
    kind: 'verdict',
    text: expect.stringMatching(/^Nock left by 0\.40 in at 6\.0 ft: /),
  });
});
it('a high tear counts from the clean one, which is a little low', async () => {
  const { data } = await ask('swing', setup, { tear: '0.4 in high', to: '40 yd' });
  const { tear } = data as { tear: { if_angle_rad: number } };
  // (0.4 + 0.06)/0.425
  expect(Math.abs(tear.if_angle_rad / DEGREE - 1.08)).toBeLessThan(0.06 /* deg: as above */);
});
it('a tear without a side is refused with what to write', async () => {
  await expect(ask('swing', setup, { tear: '0.75 in' })).rejects.toThrow(
    /which side.*Write tear "0.75 in left"/,
  );
  await expect(ask('swing', setup, { tear: '9 in left' })).rejects.toThrow(/too large/);
});
