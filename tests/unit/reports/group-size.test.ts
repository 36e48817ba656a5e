import { expect, it } from 'vitest';
import { groupSize } from '../../../src/reports/group-size.ts';

// By hand: corners of a right triangle with sides 3, 4 and 5 mm.
it('the middle of three arrows, and the distance of the two farthest apart', () => {
  const found = groupSize([
    { right: 0, high: 0 },
    { right: 0.003, high: 0 },
    { right: 0.003, high: 0.004 },
  ]);
  expect(found?.middle.right).toBeCloseTo(0.002, 15);
  expect(found?.middle.high).toBeCloseTo(0.004 / 3, 15);
  expect(found?.spread).toBeCloseTo(0.005, 15);
});

it('one arrow has a place and no size; none has neither', () => {
  expect(groupSize([{ right: 0.01, high: -0.02 }])).toEqual({
    middle: { right: 0.01, high: -0.02 },
    spread: null,
  });
  expect(groupSize([])).toBeNull();
});
