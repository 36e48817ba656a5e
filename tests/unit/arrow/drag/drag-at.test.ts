import { expect, it } from 'vitest';
import { dragAt } from '../../../../src/arrow/drag/drag-at.ts';
import { reynoldsNumber } from '../../../../src/atmosphere/reynolds-number.ts';
import { pointArrow, seaLevel } from '../../flight/point-arrow.ts';

// By hand: 1.225 x 85 x 0.006 / 1.7894e-5 = 0.62475 / 1.7894e-5 = 34 914.
it('a 6 mm shaft at 85 m/s in standard air has a Reynolds number of 34 914', () =>
  expect(Math.abs(reynoldsNumber(seaLevel, 85, 0.006) - 34_914)).toBeLessThan(0.5 /* last digit by hand */));

it('reads the drag there, and multiplies it by what calibration found', () => {
  const asReynolds = { ...pointArrow(0.03, 0.006, 0), drag: { at: (reynolds: number) => reynolds / 34_914 } };
  const coefficient = dragAt({ ...asReynolds, dragScale: 1.1 }, seaLevel, 85);
  expect(Math.abs(coefficient - 1.1)).toBeLessThan(1.1 * (0.5 / 34_914));
});
