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

it('a file full of mistakes is answered with the first twenty of them and a count', async () => {
  const wrong = `${good}${Array.from({ length: 33 }, (_, i) => `k${i}: 1\n`).join('')}`;
  const { code, err } = await atTerminal(['check', 'w.yaml'], { 'w.yaml': wrong });
  expect(code).toBe(2);
  expect(err.match(/^w\.yaml:\d+:\d+ {2}k\d+: /gm)).toHaveLength(20);
  expect(err).toMatch(/\nAnd 13 more\.\n33 problems in w\.yaml; nothing was computed\.\n$/);
});
