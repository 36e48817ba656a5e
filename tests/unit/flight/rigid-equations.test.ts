import { describe, expect, it } from 'vitest';
import type { Attitude, FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import type { Asymmetry } from '../../../src/arrow/lift/asymmetry.ts';
import type { FlightConditions } from '../../../src/flight/conditions.ts';
import { shaftPoints } from '../../../src/flight/cross-flow.ts';
import { type RigidOptions, rigidMotion } from '../../../src/flight/rigid-motion.ts';
import {
  add,
  cross,
  dot,
  length,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../../src/numerics/vector.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { conditionsOf, spinningArrow } from './point-arrow.ts';

const known: Attitude = spinningArrow.attitude ?? expect.fail('the arrow has surfaces');
const attitude: Attitude = {
  ...known,
  fins: {
    vanes: { slope: 24, place: si(-0.4), count: 3 },
    blades: { slope: 7, place: si(0.25), count: 2 },
    wake: { slope: 5, halfAngle: si(0.06) },
    uncertainty: { vanes: 0, blades: 0, wake: 0 },
  },
};
const arrow: FlyingArrow = {
  ...spinningArrow,
  attitude,
  dragScale: 1.2,
  sideForce: 0.7,
  drag: { at: (reynolds) => 1.5 + 2e-5 * reynolds },
};
const all: FlightConditions = conditionsOf(arrow, {
  wind: { tail: si(-2.3), across: si(3.1), up: si(0.7), shear: 0.21, referenceHeight: si(2.5) },
  slope: si(0.37),
  eyeHeight: si(1.7),
  place: { latitude: si(0.83), azimuth: si(2.1) },
});
const faulty: Asymmetry = {
  force: [0.02, -0.035],
  firstMoment: [si(0.013), si(0.021)],
  spinPerMetre: si(0.4),
};

const axis = unit([1, 0.11, -0.07]);
const rate: Vector3 = [0.2, 2.3, -1.7];
const state = {
  height: 0.9,
  lateral: -0.2,
  v: [71, 4.3, -1.9] as Vector3,
  spin: 310,
  time: 0.4,
  e: axis,
  turning: subtract(rate, scale(axis, dot(rate, axis))),
  roll: 2.4,
};

/** Newton and Euler as the comment of the model has them, in whole vectors, with the signs of frame.ts put in by hand. */
function derivatives(
  { arrow: flown, air, wind, slope, freeFall, eyeHeight, place }: FlightConditions,
  { asymmetry = null, crossFlow = 1.1, bladesStand = false }: RigidOptions,
) {
  const { v, spin: p, e, turning: d, roll } = state;
  const { normalSlope, firstMoment, secondMoment, shaftMoments, fins, ...inertia } = flown.attitude ?? known;
  const plumb: Vector3 = [Math.sin(slope), Math.cos(slope), 0];
  const level: Vector3 = [Math.cos(slope), -Math.sin(slope), 0];
  const gust = ((eyeHeight + state.height) / wind.referenceHeight) ** wind.shear;
  const u = subtract(v, add([gust * wind.tail, 0, gust * wind.across], scale(plumb, wind.up)));
  const U = length(u);
  const w = subtract(u, scale(e, dot(u, e)));
  const S = (Math.PI * flown.diameter ** 2) / 4;
  const P = (air.density * S) / 2;
  const CD = flown.dragScale * flown.drag.at((air.density * U * flown.diameter) / air.viscosity);

  const points = shaftPoints(shaftMoments, flown.diameter, crossFlow);
  const a = length(w) / U;
  const wake = fins?.wake ?? null;
  const back = wake === null ? 0 : (wake.slope * a ** 2) / (a ** 2 + wake.halfAngle ** 2);
  const vanes = fins?.vanes?.place ?? 0;
  const n = (k: number, slopes: number): number =>
    (slopes + back * vanes ** k) * U +
    points.reduce((sum, at) => sum + at.weight * at.place ** k * length(add(w, scale(d, at.place))), 0);
  const [n0, n1, n2] = [n(0, normalSlope), n(1, firstMoment), n(2, secondMoment)];
  const [B0, B1, B2] = shaftMoments;
  const side = flown.sideForce * air.density * 2 * Math.PI * (flown.diameter / 2) ** 2 * p;

  let force = scale(e, -P * CD * U * U);
  force = add(force, scale(add(scale(w, n0), scale(d, n1)), -P));
  force = add(force, scale(cross(e, add(scale(w, B0), scale(d, B1))), side));
  let moment = scale(add(scale(w, n1), scale(d, n2)), -P);
  moment = add(moment, scale(cross(e, add(scale(w, B1), scale(d, B2))), side));
  moment = add(moment, scale(cross(e, d), inertia.axialInertia * p));

  // The arrow's own axes: its mark, turned by the roll from what is up square to the shaft, and a quarter turn clockwise of it.
  const up = unit(subtract([0, 1, 0], scale(e, e[1])));
  const right = cross(e, up);
  const mark = add(scale(up, Math.cos(roll)), scale(right, Math.sin(roll)));
  const clockwise = add(scale(up, -Math.sin(roll)), scale(right, Math.cos(roll)));
  if (asymmetry !== null) {
    const across = ([m, c]: readonly [number, number]) => add(scale(mark, m), scale(clockwise, c));
    force = add(force, scale(across(asymmetry.force), P * U * U));
    moment = add(moment, scale(across(asymmetry.firstMoment), P * U * U));
  }
  const blades = fins?.blades ?? null;
  if (bladesStand && blades !== null && blades.count === 2) {
    // Two that stand along the mark push square to it alone, and there twice as much as many do.
    const meets = add(w, scale(d, blades.place));
    const more = subtract(scale(clockwise, 2 * dot(meets, clockwise)), meets);
    force = add(force, scale(more, -P * blades.slope * U));
    moment = add(moment, scale(more, -P * blades.slope * blades.place * U));
  }

  let earth: Vector3 = [0, 0, 0];
  if (place !== null) {
    const north = add(scale(level, Math.cos(place.azimuth ?? 0)), [0, 0, -Math.sin(place.azimuth ?? 0)]);
    earth = scale(
      add(scale(plumb, Math.sin(place.latitude)), scale(north, Math.cos(place.latitude))),
      7.292115e-5,
    );
  }
  const acceleration = add(
    scale(force, 1 / flown.mass),
    add(scale(plumb, -freeFall), scale(cross(earth, v), -2)),
  );
  const turning = subtract(scale(moment, 1 / inertia.transverseInertia), scale(e, dot(d, d)));
  const settled = inertia.spinPerMetre + (asymmetry?.spinPerMetre ?? 0);
  const spun = (settled * U - p) * ((air.density * U) / inertia.spinUp);
  // The axes "up" and "right" turn about the shaft as it does, by what of e x e' is plumb: (e x e').y e.y/(1 - e.y^2).
  const rolled = p - (cross(e, d)[1] * e[1]) / (1 - e[1] ** 2);
  const perSecond = [v[1], v[2], ...acceleration, spun, 1, d[1], d[2], turning[1], turning[2]];
  const rolling = asymmetry !== null || bladesStand;
  return (rolling ? [...perSecond, rolled] : perSecond).map((value) => value / v[0]);
}

function ofModel(conditions: FlightConditions, options: RigidOptions): readonly number[] {
  const { height, lateral, v, spin, time, e, turning, roll } = state;
  const rolling = (options.asymmetry ?? null) !== null || options.bladesStand === true;
  const y = [height, lateral, ...v, spin, time, e[1], e[2], turning[1], turning[2]] as const;
  const rates = new Array<number>(rolling ? 12 : 11).fill(Number.NaN);
  rigidMotion(conditions, options)(12, rolling ? [...y, roll] : y, rates);
  return rates;
}

const withFins = (more: Partial<NonNullable<Attitude['fins']>>): FlyingArrow => ({
  ...arrow,
  attitude: { ...attitude, fins: { ...(attitude.fins ?? expect.fail()), ...more } },
});

describe('the rigid model, component by component', () => {
  it.each<[string, FlightConditions, RigidOptions]>([
    ['with everything that blows', all, {}],
    ['in a wind that is alike at every height', { ...all, wind: { ...all.wind, shear: 0 } }, {}],
    ['with the turning of the Earth left out', { ...all, place: null }, {}],
    ['by linear laws alone', all, { crossFlow: 0 }],
    ['without a wake', { ...all, arrow: withFins({ wake: null }) }, {}],
    ['with sums of lift alone', { ...all, arrow: { ...arrow, attitude: known } }, {}],
    ['not alike all round', all, { asymmetry: faulty }],
    ['with two blades that stand', all, { bladesStand: true }],
    ['with two blades that stand, and not alike all round', all, { bladesStand: true, asymmetry: faulty }],
    [
      'with three blades, which do not care how they stand',
      { ...all, arrow: withFins({ blades: { slope: 7, place: si(0.25), count: 3 } }) },
      { bladesStand: true },
    ],
    [
      'without blades, that stand or not',
      { ...all, arrow: withFins({ blades: null }) },
      { bladesStand: true },
    ],
    [
      'with sums of lift alone, and blades that would stand',
      { ...all, arrow: { ...arrow, attitude: known } },
      { bladesStand: true },
    ],
  ])('%s, is what its comment says', (_, conditions, options) => {
    const [found, expected] = [ofModel(conditions, options), derivatives(conditions, options)];
    expect(found).toHaveLength(expected.length);
    // Rounding of terms up to some hundred times as large as what is left of them.
    for (const [i, value] of expected.entries())
      expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThan(1e-12 * Math.max(Math.abs(value), 0.1));
  });

  it('takes the wind of 5 cm for that of everything below', () => {
    const atFoot = (above: number) => ofModel({ ...all, eyeHeight: si<'m'>(above - state.height) }, {});
    expect(atFoot(-0.4)).toEqual(atFoot(0.0499));
    expect(atFoot(0.0501)).not.toEqual(atFoot(0.0499));
  });

  it('needs the roll of an arrow that is not alike all round', () => {
    const y = [0, 0, 70, 0, 0, 300, 0, 0.1, 0, 0, 0] as const;
    expect(() => rigidMotion(all, { asymmetry: faulty })(0, y, new Array<number>(12).fill(0))).toThrow(
      /needs a roll/,
    );
  });

  it('refuses an arrow without an attitude to keep, unless it may wander', () => {
    const bare = { ...all, arrow: { ...arrow, attitude: { ...known, firstMoment: si<'m'>(0.5) } } };
    expect(() => rigidMotion(bare)).toThrow(/first moment of the normal force/);
    const found = ofModel(bare, { mayWander: true });
    for (const [i, value] of derivatives(bare, {}).entries())
      expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThan(1e-12 * Math.max(Math.abs(value), 0.1));
  });
});
