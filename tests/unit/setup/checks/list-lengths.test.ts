import { describe, expect, it } from 'vitest';
import { SMALLEST } from '../example-text.ts';
import { problemsOf } from '../problems-of.ts';

const days = (count: number): string =>
  `days:\n${Array.from({ length: count }, (_, i) => `  - { date: day ${i}, temperature: 50 degF }\n`).join('')}`;
const rows = (count: number): string =>
  Array.from({ length: count }, (_, i) => `{ reynolds: ${10000 + 100 * i}, value: 2 }`).join(', ');
const drag = (count: number): string =>
  SMALLEST.replace('mass: 452 gr', `mass: 452 gr, drag_coefficient: [${rows(count)}]`);
const mark = (hits: number): string =>
  `  - { range: 40 yd, hits: [${'[1 in, -2 in], '.repeat(hits - 1)}[2 in, 0 in]] }\n`;

describe('lists are as long as anybody writes them', () => {
  it.each([
    ['days', 100, (count: number) => `${SMALLEST}${days(count)}`, 'days'],
    ['rows of drag', 100, drag, 'arrow.drag_coefficient'],
    ['arrows of a mark', 60, (count: number) => `${SMALLEST}marks:\n${mark(count)}`, 'marks.0.hits'],
  ])('%s: %i', (_, most, text, path) => {
    expect(problemsOf(text(most))).toEqual([]);
    const [problem, ...others] = problemsOf(text(most + 1));
    expect(others).toEqual([]);
    expect(problem?.path).toBe(path);
    expect(problem?.message).toContain(`has ${most + 1} entries. Allowed: at most ${most}.`);
  });
  it('arrows of all marks: 1000', () => {
    expect(problemsOf(`${SMALLEST}marks:\n${mark(50).repeat(20)}`)).toEqual([]);
    const [problem] = problemsOf(`${SMALLEST}marks:\n${mark(50).repeat(20)}${mark(3)}`);
    expect(problem?.message).toContain('hold 1003 arrows one by one. Allowed: 1000 in all.');
  });
});
