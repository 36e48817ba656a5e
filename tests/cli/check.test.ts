import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const good = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');

describe('check', () => {
  const given = { 's.yaml': good.replace('mass: 463 gr ', 'mass_sd: 1 gr\n  mass: 463 gr ') };
  it('names the uncertainties that have no effect', async () => {
    const { out } = await atTerminal(['check', 's.yaml'], given);
    expect(out).toMatch(/In the file but not used:\n {2}arrow\.mass_sd\n/);
    expect(JSON.parse((await atTerminal(['check', 's.yaml', '--json'], given)).out).unused).toEqual([
      'arrow.mass_sd',
    ]);
  });
  it('is silent about them when all have', async () => {
    const { out } = await atTerminal(['check', 'examples/mountain-hunt/setup.yaml']);
    expect(out).not.toContain('not used');
  });
});
