import { expect, it } from 'vitest';
import { SMALLEST } from '../example-text.ts';
import { problemsOf } from '../problems-of.ts';

const drops = (count: number, indent = ''): string =>
  `${indent}drops:\n${`${indent}  - { range: 40 yd, aimed_with: 20 yd, drop: 20 in }\n`.repeat(count)}`;
const day = (count: number): string => `days:\n  - date: monday\n${drops(count, '    ')}`;

it('as many measurements as a fit is made of are read', () =>
  expect(problemsOf(`${SMALLEST}${drops(150)}${day(150)}`)).toEqual([]));

it('one more is refused, with how to write them', () => {
  const [problem, ...others] = problemsOf(`${SMALLEST}${drops(301)}`);
  expect(others).toEqual([]);
  expect(problem?.path).toBe('drops');
  expect(problem?.message).toMatch(
    /drops has 301 entries\. Allowed: 300 .*as a single mark with all their arrows/,
  );
});

it('those of days count too, and the longest list is named', () => {
  const [problem] = problemsOf(`${SMALLEST}${drops(100)}${day(201)}`);
  expect(problem?.path).toBe('days.0.drops');
  expect(problem?.message).toContain('has 201 entries of the 301 marks, speeds and drops');
});
