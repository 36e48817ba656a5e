import { describe, expect, it } from 'vitest';
import type { Attitude, FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import type { FlightConditions } from '../../../src/flight/conditions.ts';
import { driftingMotion } from '../../../src/flight/drifting.ts';
import { add, cross, dot, length, scale, subtract, type Vector3 } from '../../../src/numerics/vector.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { conditionsOf, spinningArrow } from './point-arrow.ts';

const attitude: Attitude = spinningArrow.attitude ?? expect.fail('the arrow has surfaces');
const arrow: FlyingArrow = {
  ...spinningArrow,
  dragScale: 1.2,
  sideForce: 0.7,
  drag: { at: (reynolds) => 1.5 + 2e-5 * reynolds },
};

/** Everything that blows, turns and leans at once, none of it a round number. */
const all: FlightConditions = conditionsOf(arrow, {
  wind: {
    tail: si(-2.3),
    across: si(3.1),
    up: si(0.7),
    shear: 0.21,
    referenceHeight: si(2.5),
  },
  slope: si(0.37),
  eyeHeight: si(1.7),
  place: { latitude: si(0.83), azimuth: si(2.1) },
});

const state = { height: 0.9, lateral: -0.2, v: [71, 4.3, -1.9] as Vector3, spin: 310, time: 0.4 };

/** The equations as the comment of the model has them, in whole vectors, with the signs of frame.ts put in by hand. */
function derivatives({ arrow: flown, air, wind, slope, freeFall, eyeHeight, place }: FlightConditions) {
  const { v, spin: p } = state;
  const plumb: Vector3 = [Math.sin(slope), Math.cos(slope), 0];
  const level: Vector3 = [Math.cos(slope), -Math.sin(slope), 0];
  const gust = ((eyeHeight + state.height) / wind.referenceHeight) ** wind.shear;
  const blown = add([gust * wind.tail, 0, gust * wind.across], scale(plumb, wind.up));
  const u = subtract(v, blown);
  const V = length(u);
  const ahead = scale(u, 1 / V);
  const g = scale(plumb, -freeFall);
  const area = (Math.PI * flown.diameter ** 2) / 4;
  const CD = flown.dragScale * flown.drag.at((air.density * V * flown.diameter) / air.viscosity);
  const drag = scale(ahead, (-air.density * area * CD * V * V) / (2 * flown.mass));

  let turning: Vector3 = [0, 0, 0];
  if (place !== null) {
    const rate = 7.292115e-5;
    const { latitude, azimuth } = place;
    const north: Vector3 =
      azimuth === null ? [0, 0, 0] : add(scale(level, Math.cos(azimuth)), [0, 0, -Math.sin(azimuth)]);
    turning = add(scale(plumb, rate * Math.sin(latitude)), scale(north, rate * Math.cos(latitude)));
  }

  let lift: Vector3 = [0, 0, 0];
  let spun = 0;
  if (flown.attitude !== null) {
    const { normalSlope: CN, firstMoment, secondMoment, axialInertia, shaftMoments } = flown.attitude;
    const [B0, B1, B2] = shaftMoments;
    const CM = -firstMoment;
    const follow = secondMoment / CM;
    const gyroscopic = axialInertia / (flown.mass * (CM / CN));
    const shaft = (flown.sideForce * air.density * 2 * Math.PI * (flown.diameter / 2) ** 2) / flown.mass;
    const [M0, M1] = [B0 * follow + B1, (B1 * follow + B2) / CM];
    const side = (p / V) * (gyroscopic * (1 - CD / CN) + shaft * (M0 + M1 * (CN - CD)));
    const across = subtract(g, scale(ahead, dot(g, ahead)));
    const rise = ((air.density * area) / (2 * flown.mass)) * ((CN - CD) * follow - CM);
    lift = subtract(scale(cross(ahead, g), side), scale(across, rise));
    spun = (flown.attitude.spinPerMetre * V - p) * ((air.density * V) / flown.attitude.spinUp);
  }
  const a = add(add(drag, g), add(scale(cross(turning, v), -2), lift));
  return [v[1], v[2], ...a, spun, 1].map((perSecond) => perSecond / v[0]);
}

function ofModel(conditions: FlightConditions): readonly number[] {
  const slopes = new Array<number>(7).fill(Number.NaN);
  const { height, lateral, v, spin, time } = state;
  driftingMotion(conditions)(12, [height, lateral, ...v, spin, time], slopes);
  return slopes;
}

describe('the everyday model, component by component', () => {
  it.each<[string, FlightConditions]>([
    ['with everything at once', all],
    [
      'in air that is still but for what rises',
      { ...all, wind: { ...all.wind, tail: si(0), across: si(0) } },
    ],
    ['in a wind that is alike at every height', { ...all, wind: { ...all.wind, shear: 0 } }],
    [
      'downhill, without a bearing',
      { ...all, slope: si(-0.3), place: { latitude: si(-0.6), azimuth: null } },
    ],
    ['with the turning of the Earth left out', { ...all, place: null }],
    ['as a point', { ...all, arrow: { ...arrow, attitude: null } }],
    ['without a shaft that the air turns about', { ...all, arrow: { ...arrow, sideForce: 0 } }],
    [
      'with the shaft ahead of the balance',
      { ...all, arrow: { ...arrow, attitude: { ...attitude, shaftMoments: [0.7, 0.1, 0.05] } } },
    ],
  ])('%s, is what its comment says', (_, conditions) => {
    const [found, expected] = [ofModel(conditions), derivatives(conditions)];
    // Sizes differ: each is compared with its own, and with 1e-9 m/s/m where it is nearly nothing.
    for (const [i, value] of expected.entries())
      expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThan(
        1e-12 * Math.max(Math.abs(value), 1e-3),
      );
  });

  it.each([0.1, 0])(
    'finds no lift for an arrow whose pressure acts %d ahead of its balance, or at it',
    (ahead) => {
      const unsteady = { ...arrow, attitude: { ...attitude, firstMoment: si<'m'>(ahead) } };
      const point = ofModel({ ...all, arrow: { ...arrow, attitude: null } });
      expect(ofModel({ ...all, arrow: unsteady }).slice(0, 5)).toEqual(point.slice(0, 5));
    },
  );

  it('takes the wind of 5 cm for that of everything below', () => {
    const { eyeHeight, wind } = all;
    const atFoot = (below: number) => ({
      ...all,
      eyeHeight: si<'m'>(-state.height + below),
      wind: { ...wind, up: si<'m/s'>(0) },
    });
    expect(eyeHeight).toBeGreaterThan(0);
    expect(ofModel(atFoot(-0.4))).toEqual(ofModel(atFoot(0.0499)));
    expect(ofModel(atFoot(0.0501))).not.toEqual(ofModel(atFoot(0.0499)));
  });
});
