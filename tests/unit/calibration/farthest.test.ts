import { expect, it } from 'vitest';
import { farthest } from '../../../src/calibration/farthest.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { yards } from '../sight/invented-rig.ts';
import { problem, shotMarks } from './invented-problem.ts';

const marks = shotMarks([20, 40, 60], 0.0007);
const high = (index: number): readonly Measurement[] =>
  marks.map((mark, i) => (i === index && mark.kind === 'mark' ? { ...mark, vertical: 3 } : mark));

it.each([0, 1, 2])('of marks of which %i hit 3 m high is that one', (index) =>
  expect(farthest(problem(high(index)))).toEqual(high(index)[index]),
);

it('is what the arrow does not get to, before all others', () => {
  const drop: Measurement = {
    kind: 'drop',
    range: si(yards(3000)),
    aimedWith: si(yards(20)),
    drop: si(1),
    sd: si(1000),
    day: null,
  };
  expect(farthest(problem([...high(1), drop]))).toBe(drop);
});

it('of nothing is nothing', () => expect(farthest(problem([]))).toBeNull());

it('is the one that is most of its own standard uncertainties off, above the aim or below', () => {
  const off = (vertical: number, sd: number, index: number): Measurement => {
    const mark = marks[index];
    if (mark?.kind !== 'mark') expect.fail();
    return { ...mark, vertical, sd: si<'m'>(sd) };
  };
  // A yard off to half a yard, and a foot off to two inches.
  const [rough, sharp] = [off(0.9, 0.45, 0), off(-0.3, 0.05, 1)];
  expect(farthest(problem([rough, sharp]))).toBe(sharp);
  expect(farthest(problem([sharp, rough]))).toBe(sharp);
});

it('lets an error of the program itself through', () => {
  const [first] = marks;
  if (first?.kind !== 'mark') expect.fail();
  const broken: Measurement = {
    ...first,
    get vertical(): never {
      throw new RangeError('the program is wrong');
    },
  };
  expect(() => farthest(problem([broken]))).toThrow('the program is wrong');
});

it('measures a speed by how far it is from that of the arrow, and not by its size', () => {
  const slow: Measurement = { kind: 'speed', range: si(0.5), speed: si(84.5), sd: si(0.3), day: null };
  // A speed 2.8 of its standard uncertainties low, and a group ten high.
  const [first] = marks;
  if (first?.kind !== 'mark') expect.fail();
  const high10: Measurement = { ...first, vertical: 10 * first.sd };
  expect(farthest(problem([slow, high10]))).toBe(high10);
});
