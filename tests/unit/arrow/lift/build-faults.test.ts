import { describe, expect, it } from 'vitest';
import { ALIKE } from '../../../../src/arrow/lift/asymmetry.ts';
import { asymmetryOf, type BuildFaults } from '../../../../src/arrow/lift/build-faults.ts';
import { type Radians, si } from '../../../../src/quantities/quantity.ts';
import { huntingArrow } from '../../flight/hunting-arrow.ts';
import { pointArrow } from '../../flight/point-arrow.ts';

const up: Radians = si(0);
const none: BuildFaults = {
  bend: { sag: si(0), at: up },
  head: { tilt: si(0), at: up },
  vane: { error: si(0), at: up },
};
const arrow = huntingArrow();
const { nose, vanes } = arrow.surfaces ?? expect.fail('no surfaces');
const ring = vanes ?? expect.fail('no vanes');
const balance = arrow.flying.balance;

describe('asymmetryOf', () => {
  it('a true arrow feels nothing', () => {
    const { force, firstMoment, spinPerMetre } = asymmetryOf(arrow, none);
    expect([...force, ...firstMoment, spinPerMetre].map(Math.abs)).toEqual([0, 0, 0, 0, 0]);
    expect([...ALIKE.force, ...ALIKE.firstMoment, ALIKE.spinPerMetre]).toEqual([0, 0, 0, 0, 0]);
  });

  it('one of three vanes off by 1 deg pushes clockwise 2/3 as hard as the ring at 1 deg and adds 1/9 of a 3 deg spin', () => {
    const error = Math.PI / 180;
    const { force, firstMoment, spinPerMetre } = asymmetryOf(arrow, {
      ...none,
      vane: { error: si(error), at: up },
    });
    const expected = (2 / 3) * ring.ringSlope * error;
    expect(Math.abs(force[0])).toBeLessThan(1e-15 /* N, rounding */);
    expect(Math.abs(force[1] - expected)).toBeLessThan(1e-12 /* rounding */);
    expect(Math.abs(firstMoment[1] - expected * (ring.place - balance))).toBeLessThan(1e-12 /* rounding */);
    expect(Math.abs(spinPerMetre / (arrow.flying.attitude?.spinPerMetre ?? 0) - 1 / 9)).toBeLessThan(
      1e-12 /* relative, rounding */,
    );
  });

  it('straight vanes with one off spin as the same mean angle on all would', () => {
    const straight = huntingArrow({ turn: 'none' });
    const off = asymmetryOf(straight, { ...none, vane: { error: si(Math.PI / 60), at: up } });
    const mean = huntingArrow({ angle: Math.PI / 180 }).flying.attitude?.spinPerMetre ?? 0;
    expect(Math.abs(off.spinPerMetre / mean - 1)).toBeLessThan(1e-12 /* relative, rounding */);
  });

  it('a bent shaft sets the vanes at the slope of its rear, 4 sag / length, less the lean of its mass', () => {
    // By hand: the lean moves the whole by one angle, so the force is linear in it; two places give two equations.
    const sag = 1e-4;
    const { force } = asymmetryOf(arrow, { ...none, bend: { sag: si(sag), at: up } });
    const length = 28.5 * 0.0254;
    const slopeAt = (place: number): number => {
      const share = (place - 0.25 * 0.0254 - length / 2) / (length / 2);
      return (-4 * sag * Math.min(1, Math.max(-1, share))) / length;
    };
    // Munk: nose and shaft together lift by the slope at the rear; the lean takes its share from nose and vanes.
    const withoutLean = nose.slope * slopeAt(0) + ring.ringSlope * slopeAt(ring.place);
    const lean = (withoutLean - force[0]) / (nose.slope + ring.ringSlope);
    expect(force[0]).toBeGreaterThan(0);
    // The heavy front end, on the falling part of the bow, tips the line of the mass down towards the tip.
    expect(lean).toBeLessThan(0);
    expect(Math.abs(lean)).toBeLessThan((4 * sag) / length / 3);
  });

  it.each(['field', 'fixed_blade'] as const)(
    'a bent shaft and a leaning %s point meet the air as sums over short lengths say: slender body, fins, and lean of the mass',
    (shape) => {
      const whole = huntingArrow({ shape });
      const surfaces = whole.surfaces ?? expect.fail('no surfaces');
      const [rear, front, sag, tilt] = [0.25 * 0.0254, 28.75 * 0.0254, 2e-4, 0.004];
      const middle = (rear + front) / 2;
      const half = (front - rear) / 2;
      const bent = (place: number): number => {
        if (place > front) return (-2 * sag * (place - front)) / half;
        if (place < rear) return (2 * sag * (place - rear)) / half;
        return sag * (1 - ((place - middle) / half) ** 2);
      };
      const leaning = (place: number): number => (place > front ? tilt * (place - front) : 0);
      for (const [line, faults] of [
        [bent, { ...none, bend: { sag: si<'m'>(sag), at: up } }],
        [leaning, { ...none, head: { tilt: si<'rad'>(tilt), at: up } }],
      ] as const) {
        const slopeAt = (place: number): number => (line(place + 1e-7) - line(place - 1e-7)) / 2e-7;
        // Each piece as 400 grains in a row.
        const grains = whole.pieces.flatMap(({ mass, place, length }) =>
          Array.from({ length: 400 }, (_, i) => ({
            mass: mass / 400,
            x: place + ((i + 0.5) / 400 - 0.5) * length,
          })),
        );
        const mean = (of: (x: number) => number): number =>
          grains.reduce((sum, { mass, x }) => sum + mass * of(x), 0) /
          grains.reduce((sum, { mass }) => sum + mass, 0);
        const [x0, y0] = [mean((x) => x), mean(line)];
        const lean = mean((x) => (x - x0) * (line(x) - y0)) / mean((x) => (x - x0) ** 2);

        const lifts: [lift: number, place: number][] = [
          [2 * (slopeAt(surfaces.nose.place) - lean), surfaces.nose.place],
        ];
        for (const ring of [surfaces.vanes, surfaces.blades])
          if (ring !== null) lifts.push([ring.ringSlope * (slopeAt(ring.place) - lean), ring.place]);
        // From the nose to the rear a round body of one girth lifts by 2 for each change of its slope.
        const places = [surfaces.nose.place];
        const strips = 2000;
        for (let i = 0; i <= strips; i += 1) places.push(front + 1e-6 - ((front - rear) * i) / strips);
        places.forEach((place, i) => {
          const ahead = places[i - 1];
          if (ahead !== undefined)
            lifts.push([2 * (slopeAt(place) - slopeAt(ahead)), i === 1 ? front : (place + ahead) / 2]);
        });
        const force = lifts.reduce((sum, [lift]) => sum + lift, 0);
        const moment = lifts.reduce((sum, [lift, place]) => sum + lift * (place - whole.flying.balance), 0);

        const found = asymmetryOf(whole, faults);
        const scale = 2 * tilt + (4 * sag) / half;
        // Three places stand for each piece, and the line's kink at the shaft's end lies within the point's.
        expect(Math.abs(found.force[0] - force)).toBeLessThan(5e-3 * scale /* of q S */);
        expect(Math.abs(found.firstMoment[0] - moment)).toBeLessThan(
          5e-3 * 0.4 * scale /* of q S, m: arms of 0.4 m */,
        );
      }
    },
  );

  it('of four vanes one pushes half as hard as the ring, and adds a quarter to the mean angle', () => {
    const four = huntingArrow({ count: 4, angle: 0.04 });
    const wide = four.surfaces?.vanes ?? expect.fail('no vanes');
    const off = asymmetryOf(four, { ...none, vane: { error: si(0.01), at: up } });
    expect(Math.abs(off.force[1] - 0.5 * wide.ringSlope * 0.01)).toBeLessThan(1e-12 /* rounding */);
    expect(Math.abs(off.spinPerMetre / (four.flying.attitude?.spinPerMetre ?? 0) - 1 / 16)).toBeLessThan(
      1e-12 /* relative, rounding */,
    );
  });

  it('where the shaft is left out of the spin, it is left out of what one vane adds: 1/9 of that of 3 deg', () => {
    const free = huntingArrow({ choices: { shaftSlowsSpin: false } });
    const off = asymmetryOf(free, { ...none, vane: { error: si(Math.PI / 180), at: up } });
    expect(
      Math.abs(off.spinPerMetre / (free.flying.attitude?.spinPerMetre ?? Number.NaN) - 1 / 9),
    ).toBeLessThan(1e-12 /* relative, rounding */);
  });

  it('an arrow without vanes has no vane that is off, and one that flies as a point does not spin', () => {
    const bare = { ...arrow, surfaces: { ...(arrow.surfaces ?? expect.fail()), vanes: null } };
    const off: BuildFaults = { ...none, vane: { error: si(0.01), at: up } };
    expect(() => asymmetryOf(bare, off)).toThrow(/vanes/);
    expect(asymmetryOf(bare, none).force.map(Math.abs)).toEqual([0, 0]);
    const still = { ...arrow, flying: { ...arrow.flying, attitude: null } };
    expect(asymmetryOf(still, off).spinPerMetre).toBe(0);
  });

  it('a leaning bare point hardly lifts, a leaning broadhead does: its blades meet the air at the lean', () => {
    const head = { tilt: si<'rad'>(0.01), at: up };
    const bare = asymmetryOf(arrow, { ...none, head });
    const bladed = huntingArrow({ shape: 'fixed_blade' });
    const broad = asymmetryOf(bladed, { ...none, head });
    expect(Math.abs(bare.force[0])).toBeLessThan(0.2 * nose.slope * 0.01);
    expect(broad.force[0]).toBeGreaterThan(0.9 * (bladed.surfaces?.blades?.ringSlope ?? 0) * 0.01);
  });

  it('turning every fault round the shaft turns the force and the moment with it', () => {
    const faults = (at: number): BuildFaults => ({
      bend: { sag: si(1e-4), at: si(at + 1) },
      head: { tilt: si(0.005), at: si(at + 2) },
      vane: { error: si(0.01), at: si(at) },
    });
    const [a, b] = [asymmetryOf(arrow, faults(0)), asymmetryOf(arrow, faults(0.8))];
    for (const which of ['force', 'firstMoment'] as const) {
      const [x, y] = a[which];
      expect(Math.abs(b[which][0] - (x * Math.cos(0.8) - y * Math.sin(0.8)))).toBeLessThan(
        1e-15 /* rounding */,
      );
      expect(Math.abs(b[which][1] - (x * Math.sin(0.8) + y * Math.cos(0.8)))).toBeLessThan(
        1e-15 /* rounding */,
      );
    }
  });

  it('refuses an arrow known by its totals alone', () => {
    expect(() =>
      asymmetryOf({ ...arrow, flying: pointArrow(0.03, 0.006, 2), parts: null, surfaces: null }, none),
    ).toThrow(/parts/);
    expect(() => asymmetryOf({ ...arrow, surfaces: null }, none)).toThrow(/parts/);
    expect(() => asymmetryOf({ ...arrow, parts: null }, none)).toThrow(/parts/);
  });
});
