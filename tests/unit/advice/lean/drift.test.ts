import { describe, expect, it } from 'vitest';
import { drift } from '../../../../src/advice/lean/drift.ts';
import { windFrom } from '../../../../src/atmosphere/wind.ts';
import { launchFromEye } from '../../../../src/flight/launch.ts';
import { fly } from '../../../../src/flight/trajectory.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { huntingArrow } from '../../flight/hunting-arrow.ts';
import { conditionsOf } from '../../flight/point-arrow.ts';
import { inventedRig } from '../../sight/invented-rig.ts';
import { courseRanges, inches, mirrored, spinningRig } from '../invented-bow.ts';

const placed = (latitude: number, azimuth: number | null = null) => ({
  ...spinningRig,
  conditions: {
    ...spinningRig.conditions,
    place: { latitude: si<'rad'>(latitude), azimuth: azimuth === null ? null : si<'rad'>(azimuth) },
  },
});

describe('drift', () => {
  const rows = drift(placed(Math.PI / 4), courseRanges);
  const last = rows.at(-1) ?? expect.fail();

  it('a right helical drifts left, more at longer range, by either cause', () => {
    for (const [i, row] of rows.entries()) {
      expect(row.gyroscopic).toBeLessThan(rows[i - 1]?.gyroscopic ?? 0);
      expect(row.shaftForceCeiling).toBeLessThan(rows[i - 1]?.shaftForceCeiling ?? 0);
    }
  });

  it('at 100 yd: 0.031 in left (independent six-degree-of-freedom figure), to 0.003 in', () =>
    expect(Math.abs(last.gyroscopic + inches(0.031))).toBeLessThan(
      inches(0.003) /* its print, the spin-up of an invented arrow, and a start 1 m ahead of the eye */,
    ));

  it("the shaft's ceiling is that of the rigid arrow out of a clean launch: 1.18 in at 100 yd (independent figure)", () => {
    const conditions = conditionsOf(huntingArrow({ choices: { shaftSlowsSpin: false } }).flying);
    const [far] = drift({ ...spinningRig, conditions }, [inches(3600)]);
    // 8 % for the shaft's ends, which are not printed (reference/rigid-body-figures), 2 % for a start 1 m ahead of the eye, and
    // 2 % for the cross-flow on the shaft, which that program leaves out.
    expect(Math.abs((far?.shaftForceCeiling ?? 0) / -inches(1.18) - 1)).toBeLessThan(0.12 /* relative */);
  });

  it('the ceiling is above what the settled law says of it, and most so close by', () => {
    const conditions = conditionsOf(huntingArrow().flying);
    const rig = { ...spinningRig, conditions };
    const settled = courseRanges.map((range) => {
      const at = (sideForce: number): number =>
        fly(
          { ...conditions, arrow: { ...conditions.arrow, sideForce } },
          launchFromEye(si(85.344), si(0.01)),
          [range],
        )[0]?.lateral ?? Number.NaN;
      return at(1) - at(0);
    });
    const shares = drift(rig, courseRanges).map(
      ({ shaftForceCeiling }, i) => shaftForceCeiling / (settled[i] ?? Number.NaN),
    );
    expect(shares.at(-1)).toBeGreaterThan(1.08);
    for (const [i, share] of shares.entries())
      if (i > 0) expect(share).toBeLessThan(shares[i - 1] ?? Number.NaN);
  });

  it('the Earth moves it 0.21 in right at 100 yd at 45 deg north (independent figure), to 0.006 in', () =>
    expect(Math.abs((last.coriolis ?? 0) - inches(0.21))).toBeLessThan(
      inches(0.006) /* the print, and a start 1 m ahead of the eye */,
    ));

  it('the Earth moves it left in the south by as much', () => {
    const south = drift(placed(-Math.PI / 4), courseRanges).at(-1)?.coriolis ?? 0;
    expect(Math.abs(south + (last.coriolis ?? 0))).toBeLessThan(1e-7 /* m */);
  });

  it('without a place there is no figure for the Earth', () =>
    expect(drift(spinningRig, courseRanges).every(({ coriolis }) => coriolis === null)).toBe(true));

  it('an arrow of which only the mass is known does not drift', () => {
    for (const row of drift(inventedRig, courseRanges)) {
      expect(row.gyroscopic).toBe(0);
      expect(row.shaftForceCeiling).toBe(0);
    }
  });

  it('a mirrored bow drifts mirrored, exactly', () => {
    const here = placed(0.7);
    const windy = { ...here, conditions: { ...here.conditions, wind: windFrom(si(3), si(2)) } };
    for (const [i, row] of drift(mirrored(windy), courseRanges).entries()) {
      const ours = drift(windy, courseRanges)[i];
      expect(row.gyroscopic).toBe(-(ours?.gyroscopic ?? 0));
      expect(row.shaftForceCeiling).toBe(-(ours?.shaftForceCeiling ?? 0));
      expect(row.coriolis).toBe(-(ours?.coriolis ?? 0));
    }
  });
});
