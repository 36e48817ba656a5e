import { describe, expect, it } from 'vitest';
import { flyer } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { readingAt } from '../../../src/sight/scale.ts';
import { asZeroed, impact, pinAtZero, pinForHit, withSightOf } from '../../../src/sight/zero.ts';
import { conditionsOf, pointArrow, seaLevel, spinningArrow } from '../flight/point-arrow.ts';
import { inventedRig } from './invented-rig.ts';

/** A sight zeroed with a spinning arrow, canted so that its windage is not 0. */
const home: Rig = { ...inventedRig, conditions: conditionsOf(spinningArrow), cant: si(0.05) };
/** Another arrow, slower and heavier, thin air and a jump of its own. */
const heavy: Rig = {
  ...home,
  conditions: {
    ...conditionsOf(pointArrow(0.035, 0.0062484, 2.5)),
    air: { ...seaLevel, density: si(1.1) },
    freeFall: 9.79,
  },
  launchSpeed: si(78),
  geometry: { ...home.geometry, freeFlight: si(0.95), jump: { rise: si(0.001), angle: si(0.0005) } },
};
const other = withSightOf(home, heavy);

describe('a rig that shoots with the sight of another one', () => {
  it('keeps the windage that the other was zeroed with', () => {
    const { windage } = pinAtZero(home, null);
    expect(Math.abs(windage)).toBeGreaterThan(1e-4 /* m */);
    expect(pinAtZero(other, null).windage).toBe(windage);
    expect(pinAtZero(other, 0).windage).toBe(0);
  });

  it('hits in height at the zero range with its own mark of it, and to the side where the windage sends it', () => {
    const pin = pinAtZero(other, null);
    const { height } = impact(flyer(other.conditions), other, pin, other.zeroRange);
    expect(Math.abs(height)).toBeLessThan(1e-7 /* m: as promised */);
  });

  it('reads every place of the pin as before: its zero where the scale says that the pin stands', () => {
    const lower = pinAtZero(other, null).down - pinAtZero(home, null).down;
    expect(lower).toBeGreaterThan(1e-3 /* m: it is slower */);
    const { scale } = home;
    if (scale === null) expect.fail('the sight has a scale');
    // 12.4 at the zero of the other, and 1 mm of travel for each unit.
    expect(other.scale?.atZero).toBeCloseTo(12.4 + lower / 0.001, 9);
    expect(other.scale).toEqual({ ...scale, atZero: readingAt(scale, lower) });
  });

  it('has no scale where the other has none, but its own arrow and air', () => {
    const bare = withSightOf({ ...home, scale: null }, heavy);
    expect(bare.scale).toBeNull();
    expect(bare.conditions).toBe(heavy.conditions);
    expect(bare.zeroedWith).toEqual(other.zeroedWith);
  });

  it('remembers with what it was zeroed: the same also where that one shoots with the sight of a third', () => {
    expect(other.zeroedWith).toEqual({
      arrow: home.conditions.arrow,
      air: home.conditions.air,
      freeFall: home.conditions.freeFall,
      launchSpeed: 85.344,
      freeFlight: 0.98,
    });
    expect(withSightOf(other, { ...heavy, launchSpeed: si(70) }).zeroedWith).toEqual(other.zeroedWith);
  });
});

describe('asZeroed', () => {
  it('is the rig itself where it was zeroed with what it shoots', () => expect(asZeroed(home)).toBe(home));
  it('has the arrow, air, speed and start of the zero, without the jump that is the new arrow`s', () => {
    const back = asZeroed(other);
    expect(back.zeroedWith).toBeNull();
    expect(back.launchSpeed).toBe(85.344);
    expect(back.geometry).toEqual(home.geometry);
    expect(back.conditions).toEqual(home.conditions);
    expect(pinAtZero(back, null)).toEqual(pinAtZero(home, null));
  });
});

describe('the corrections of a pin', () => {
  /** How many flights it takes to hit. */
  const flights = (rig: Rig, range: number, windage: number | null): number => {
    const flight = flyer(rig.conditions);
    let count = 0;
    pinForHit(rig, range, windage, {
      ...flight,
      entered: (launch, ranges) => {
        count += 1;
        return flight.entered(launch, ranges);
      },
    });
    return count;
  };
  const crooked: Rig = { ...home, cant: si(0.5), geometry: { ...home.geometry, lean: si(0.3) } };

  it.each([20, 60, 90])(
    'hit at %d m within six flights, however the bow is held and the sight leans',
    (range) => {
      for (const rig of [home, crooked, { ...crooked, cant: si<'rad'>(-0.4) }])
        for (const windage of [null, 0.001]) expect(flights(rig, range, windage)).toBeLessThanOrEqual(6);
    },
  );

  it('hit what they aim at where bow and sight are crooked', () => {
    const flight = flyer(crooked.conditions);
    const hit = impact(flight, crooked, pinForHit(crooked, 60, null, flight), 60);
    expect(Math.hypot(hit.height, hit.lateral)).toBeLessThan(1.5e-7 /* m: as promised in both directions */);
  });
});
