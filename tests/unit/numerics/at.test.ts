import { expect, it } from 'vitest';
import { at, floatAt } from '../../../src/numerics/at.ts';

it('finds what stands at a place, in lists and in typed arrays', () => {
  expect(at([3, 1, 4], 2)).toBe(4);
  expect(at(['a', 'b'], 0)).toBe('a');
  expect(floatAt(new Float64Array([2.5, 7]), 1)).toBe(7);
});

it('hands out what is there, be it 0, an empty text, null or NaN', () => {
  expect([at([0], 0), at([''], 0), at([null], 0), at([false], 0)]).toEqual([0, '', null, false]);
  expect(at([Number.NaN], 0)).toBeNaN();
});

it.each([
  [[3, 1, 4], 3, 'there is no element 3 in a list of 3'],
  [[3, 1, 4], -1, 'there is no element -1 in a list of 3'],
  [[3, 1, 4], 0.5, 'there is no element 0.5 in a list of 3'],
  [[], Number.NaN, 'there is no element NaN in a list of 0'],
])('names the place where nothing stands: %j at %d', (list, i, message) => {
  expect(() => at(list, i)).toThrow(new RangeError(message));
});

it('names the place in a typed array too', () =>
  expect(() => floatAt(new Float64Array(2), 2)).toThrow(
    new RangeError('there is no element 2 in a list of 2'),
  ));
