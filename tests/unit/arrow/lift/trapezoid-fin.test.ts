import { expect, it } from 'vitest';
import {
  chordRadiusSquared,
  finArea,
  finCentreOfPressure,
  meanChordHeight,
  midChordCosine,
  type TrapezoidFin,
} from '../../../../src/arrow/lift/trapezoid-fin.ts';

const vane: TrapezoidFin = {
  rootChord: 0.05,
  tipChord: 0.02,
  height: 0.012,
  sweep: 0.025,
  rootRadius: 0.003,
};

/** Midpoint sums over 4000 strips: good to 1e-7. */
const overHeight = (of: (y: number, chord: number) => number): number => {
  const n = 4000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const y = ((i + 0.5) / n) * vane.height;
    sum += (of(y, vane.rootChord + ((vane.tipChord - vane.rootChord) * y) / vane.height) * vane.height) / n;
  }
  return sum;
};
const area = overHeight((_, chord) => chord);

it.each([
  ['area', finArea(vane), area],
  ['chord times radius squared', chordRadiusSquared(vane), overHeight((y, c) => c * (y + 0.003) ** 2)],
  ['height of the mean chord', meanChordHeight(vane), overHeight((y, c) => c * y) / area],
  [
    'centre of pressure, the quarter points weighted by chord',
    finCentreOfPressure(vane),
    overHeight((y, c) => c * ((y / 0.012) * 0.025 + c / 4)) / area,
  ],
])('%s is the sum over strips, to 1e-6', (_, closed, summed) => {
  expect(Math.abs(closed / summed - 1)).toBeLessThan(1e-6 /* relative */);
});

it('the middle line of an upright rectangle is not swept', () => {
  expect(midChordCosine({ ...vane, tipChord: 0.05, sweep: 0 })).toBe(1);
});

it('the middle line of this vane leans back by 10 mm over 12', () => {
  // Fronts 25 mm apart, half chords 25 and 10 mm: 25 + 10 - 25 = 10 mm.
  expect(midChordCosine(vane)).toBeCloseTo(12 / Math.hypot(12, 10), 12);
});
