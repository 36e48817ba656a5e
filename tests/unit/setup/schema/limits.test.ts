import { describe, expect, it } from 'vitest';
import { DEFAULTS, defaultOf } from '../../../../src/setup/assemble/defaults.ts';
import { isWithin, type Limit } from '../../../../src/setup/schema/limit.ts';
import { LIMITS } from '../../../../src/setup/schema/limits.ts';
import { readQuantity } from '../../../../src/setup/schema/quantity-leaf.ts';
import { exampleOf } from '../../../../src/setup/schema/refusal.ts';

const rows = Object.entries<Limit>(LIMITS);

describe.each(rows)('%s', (key, limit) => {
  it('has an example inside its limits, in both kinds of unit', () => {
    expect(limit.min).toBeLessThan(limit.max);
    for (const metric of [false, true]) {
      const known = Object.keys(LIMITS).find((each): each is keyof typeof LIMITS => each === key);
      if (known === undefined) throw new Error(key);
      expect(readQuantity(known, exampleOf(limit, metric)).refusal).toBeUndefined();
    }
  });

  it('has a reason in a whole sentence', () => {
    expect(limit.why).toMatch(/^[A-Z1].*\w\.$/);
    expect(limit.why.split(' ').length).toBeGreaterThan(3);
  });
});

it('both ends of a limit are inside it, and a thousandth beyond is not', () => {
  const limit: Limit = LIMITS['arrow.mass'];
  expect(readQuantity('arrow.mass', '100 gr').refusal).toBeUndefined();
  expect(readQuantity('arrow.mass', '1500 gr').refusal).toBeUndefined();
  expect(readQuantity('arrow.mass', '99.9 gr').refusal?.reason).toContain('below the limit');
  expect(readQuantity('arrow.mass', '1501 gr').refusal?.reason).toContain('above the limit');
  expect(isWithin(limit, Number.NaN)).toBe(false);
});

/** Builds that people do shoot, from youth bows to heavy hunting arrows; common practice, no source. */
it.each([
  ['arrow.mass', '220 gr'],
  ['arrow.mass', '750 gr'],
  ['arrow.diameter', '0.166 in'],
  ['arrow.diameter', '0.422 in'],
  ['launch.speed', '120 fps'],
  ['launch.speed', '360 fps'],
  ['bow.peep_height', '3 in'],
  ['bow.peep_height', '6 in'],
  ['bow.draw_length', '20 in'],
  ['bow.draw_length', '32.5 in'],
  ['sight.peep_to_pin', '22 in'],
  ['sight.peep_to_pin', '40 in'],
  ['arrow.parts.point.mass', '300 gr'],
  ['arrow.parts.shaft.mass_per_length', '4.5 gpi'],
  ['marks.range', '140 yd'],
  ['air.temperature', '-25 degC'],
  ['air.altitude', '12000 ft'],
] as const)('%s of %s is no slip', (key, text) => expect(readQuantity(key, text).refusal).toBeUndefined());

it.each(Object.keys(DEFAULTS).filter((key): key is keyof typeof DEFAULTS => key in DEFAULTS))(
  'the default of %s can be read, is inside its limits and has a reason',
  (key) => {
    const value = defaultOf(key);
    expect(Number.isFinite(value)).toBe(true);
    // A phrase, for it is printed in brackets behind the value.
    expect(DEFAULTS[key].why).toMatch(/^[a-z].{4,}[a-z%]$/);
    const limit = rows.find(([name]) => name === key)?.[1];
    expect(limit === undefined || isWithin(limit, value)).toBe(true);
  },
);
