import { expect, it } from 'vitest';
import { rangeOfPin } from '../../../../src/advice/range/level-range.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { sightIn } from '../../../../src/sight/sighted.ts';
import { conditionsOf, pointArrow } from '../../flight/point-arrow.ts';
import { inventedRig } from '../../sight/invented-rig.ts';

/** Vanes that brake: past its mark it comes down so steeply that it never gets half as far again. */
const braked: Rig = {
  ...inventedRig,
  conditions: conditionsOf(pointArrow(0.013, 0.0076, 9.5)),
  launchSpeed: si(91.44),
  zeroRange: si(13.7),
};

it.each([20, 60, 80, 84, 86, 88, 90, 91, 92, 93])(
  'the pin of a braked arrow that hits at %f m is the mark of that range',
  (range) => {
    const { pins, flight } = sightIn(braked, [range]);
    const [pin] = pins;
    if (pin === undefined) throw new Error('no pin');
    const found = rangeOfPin(braked, flight, pin, range);
    expect(Math.abs((found ?? Number.NaN) - range)).toBeLessThan(
      1e-3 /* m: far below what a mark can be read to */,
    );
  },
);
