import { describe, expect, it } from 'vitest';
import { editDistance, nearestWord } from '../../../src/quantities/nearest-word.ts';

describe('editDistance', () => {
  it.each([
    ['', '', 0],
    ['draw', 'draw', 0],
    ['draw', '', 4],
    ['', 'draw', 4],
    ['kitten', 'sitting', 3], // the textbook example: two substitutions and an insertion
    ['lenght', 'length', 1], // one swap
    ['diamter', 'diameter', 1],
    ['DRAW', 'draw', 0],
    ['ca', 'abc', 3], // restricted form: the swapped pair is not edited again (2 without the restriction)
  ])('of %j and %j is %d', (first, second, distance) => {
    expect(editDistance(first, second)).toBe(distance);
    expect(editDistance(second, first)).toBe(distance);
  });
});

describe('nearestWord', () => {
  const known = ['draw_length', 'brace_height', 'peep_height', 'mass'];

  it.each([
    ['draw_lenght', 'draw_length'],
    ['drawlength', 'draw_length'],
    ['peak_height', 'peep_height'],
    ['Mass', 'mass'],
  ])('of %j is %j', (word, nearest) => expect(nearestWord(word, known)).toBe(nearest));

  it.each(['colour', '', 'x', 'z'.repeat(10_000)])('of %j is none', (word) =>
    expect(nearestWord(word, known)).toBeUndefined(),
  );
});
