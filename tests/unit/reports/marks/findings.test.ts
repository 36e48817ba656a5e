import { describe, expect, it } from 'vitest';
import { si } from '../../../../src/quantities/quantity.ts';
import { touchingFrom } from '../../../../src/reports/marks/findings.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { inventedRig, yards } from '../../sight/invented-rig.ts';

/** A sight whose housing hangs far below its pin: a low pin touches the arrow. How sure the marks are plays no part. */
const rig = { ...inventedRig, housingBelowPin: si<'m'>(0.06) };
const nobodyAsked = {
  range: si<'m'>(0),
  travelSd: si<'m'>(0),
  readingSd: 0,
  onTargetSd: si<'m'>(0),
  gradient: [],
  heightPerUnit: 0,
};
const rowsAt = (counts: readonly number[], of = rig) =>
  marksFor(of, counts.map(yards)).marks.map((mark) => ({ mark, uncertainty: nobodyAsked }));
const yard = si<'m'>(0.9144);

describe('touchingFrom', () => {
  it('finds the whole yard that the rows jump over, found here by solving every yard', () => {
    const everyYard = Array.from({ length: 91 }, (_, i) => 10 + i);
    const touching = rowsAt(everyYard).filter(({ mark }) => mark.clearance < 0 && !mark.rising);
    const first = touching[0]?.mark.range ?? Number.NaN;
    // Neither the first row nor a row itself, or the test would prove nothing.
    expect(first).toBeGreaterThan(yards(10));
    expect((Math.round(first / yard) - 10) % 30).not.toBe(0);
    // The same yard, solved from shared paths of other pins: to 1e-9 m.
    expect(Math.abs((touchingFrom(rig, rowsAt([10, 40, 70, 100]), yard) ?? 0) - first)).toBeLessThan(
      1e-9 /* m */,
    );
  });
  it('is null when the sight has room for every mark', () =>
    expect(touchingFrom(inventedRig, rowsAt([10, 100], inventedRig), yard)).toBeNull());
  it('is null without rows', () => expect(touchingFrom(rig, [], yard)).toBeNull());
});
