import { expect, it } from 'vitest';
import { plateFriction, term } from '../../../../src/arrow/drag/drag-term.ts';

it('a plate 1 in 25 thick has 8 % more friction than a thin one, on both sides', () => {
  // 2 x 0.005 x (1 + 2/25) x 3 m2 = 0.0324 m2
  expect(Math.abs(plateFriction(3, 0.02, 0.5, 0.005) - 0.0324)).toBeLessThan(1e-15 /* m2, rounding */);
});

it('a term is put on the section, and its Reynolds number on its own length', () => {
  // 0.006 m2 on a section of 0.003 m2; 5e6 per metre over 0.04 m.
  expect(term('base', 0.006, 0.04, 0.7, { section: 0.003, perMetre: 5e6 }, 'here')).toEqual({
    name: 'base',
    coefficient: 2,
    reynolds: 2e5,
    area: 0.7,
    source: 'here',
  });
});
