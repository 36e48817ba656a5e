import { describe, expect, it } from 'vitest';
import { readSetup } from '../../../src/setup/read.ts';
import { starterSetup } from '../../../src/setup/starter.ts';

/** The file with every optional line taken out of its comment. */
const unfolded = (text: string) =>
  text
    .replace(/^# ?(?=(air|wind|latitude|marks| +- \{))/gm, '')
    .replace(/^( *)# (?=(\w+: ?|\w+:$| {2}\w+: ))(?!The parts)/gm, '$1');

describe.each(['imperial', 'metric'] as const)('the %s starter file', (units) => {
  const text = starterSetup({ units });

  it('is read as it is', () => {
    const setup = readSetup(text, 'setup.yaml');
    // both are the same invented bow, in round numbers of their own units
    expect(Math.abs(Number(setup.launch.speed) - 85.6)).toBeLessThan(0.1 /* m/s */);
    expect(Math.abs((setup.arrow.mass ?? 0) - 0.0293)).toBeLessThan(1e-4 /* kg */);
  });

  it('is read with everything optional taken in', () => {
    const setup = readSetup(unfolded(text), 'setup.yaml');
    expect(setup.marks?.length).toBe(2);
    expect(setup.sight.scale?.at_zero).toBe(12.4);
    expect(setup.bow.peak_draw_weight).toBeGreaterThan(0);
    expect(setup.air?.humidity).toBe(0.5);
    expect(setup.builds?.length).toBe(1);
    expect(setup.bow.rating?.speed).toBeGreaterThan(100);
    expect(setup.bow.chronographed?.length).toBe(1);
  });

  it('says of everything that is needed what it is', () => {
    for (const key of ['peep_height', 'diameter', 'mass', 'speed', 'peep_to_pin'])
      expect(text).toMatch(new RegExp(`^ +${key}: .* # NEEDED`, 'm'));
  });

  it('has lines that a terminal shows whole', () => {
    expect(text.split('\n').filter((line) => line.length > 130)).toEqual([]);
  });

  it('takes a title and values that are known already', () => {
    const named = starterSetup({
      units,
      title: 'Ridge: camp',
      values: [{ path: ['launch', 'speed'], value: '275 fps' }],
    });
    const setup = readSetup(named, 'setup.yaml');
    expect(setup.title).toBe('Ridge: camp');
    expect(setup.launch.speed).toBeCloseTo(83.82, 10);
    expect(named.split('\n').length).toBe(text.split('\n').length);
  });
});
