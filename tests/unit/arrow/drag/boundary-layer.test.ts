import { describe, expect, it } from 'vitest';
import {
  type BoundaryLayer,
  bodyFriction,
  immersion,
  type LongBody,
} from '../../../../src/arrow/drag/boundary-layer.ts';

/** The example's arrow: 28.5 in shaft, 1.3 in point and 0.25 in of nock; vanes from 3.1 in ahead of the groove. */
const INCH = 0.0254; // m
const body: LongBody = { length: 30.05 * INCH, diameter: 0.246 * INCH, trip: 26.95 * INCH };
const REYNOLDS = 36_640;

describe('bodyFriction', () => {
  // By hand. Along the body R = 36 640 x 30.05/0.246 = 4 475 740, l/d = 122.154. Turbulent throughout, R^(-1/5) and R^(-2/5):
  // 0.0034758 + 0.0004113 = 0.0038871. Laminar to the vanes, 0.89684 of it: turbulent there 0.0039363, laminar 0.0007342, so
  // 0.0038871 - 0.89684 x 0.0032021 = 0.0010154. Turning at 5e5, 0.111713 of it: 0.0054781 and 0.0019520 there, so
  // 0.0038871 - 0.111713 x 0.0035261 = 0.0034932.
  it.each<[BoundaryLayer, number]>([
    ['turbulent', 0.0038871],
    ['laminar', 0.0010154],
    ['transition', 0.0034932],
  ])('of a layer called %s on the arrow is %d by hand', (layer, byHand) =>
    expect(Math.abs(bodyFriction(body, layer, REYNOLDS) - byHand)).toBeLessThan(
      1e-7 /* of the coefficient: rounding of the hand figures */,
    ),
  );

  it('on the part ahead of the transition is that of a laminar body, and knows nothing of what follows', () => {
    // 5e5 lies 0.1117 x 30.05 = 3.36 in behind the tip.
    const ahead = 3 * INCH;
    expect(bodyFriction(body, 'transition', REYNOLDS, ahead)).toBe(
      bodyFriction({ ...body, length: ahead, trip: ahead }, 'laminar', REYNOLDS),
    );
    expect(bodyFriction(body, 'turbulent', REYNOLDS, ahead)).toBe(
      bodyFriction({ ...body, length: ahead }, 'turbulent', REYNOLDS),
    );
  });

  it('of a transition that would come behind the vanes turns at the vanes', () => {
    // At a Reynolds number of 4000 on the diameter 5e5 lies 125 diameters, 30.75 in, from the tip.
    expect(bodyFriction(body, 'transition', 4000)).toBe(bodyFriction(body, 'laminar', 4000));
  });
});

/** Midpoint sum of a smooth function over 0 to `to`. */
function integral(of: (y: number) => number, to: number): number {
  const strips = 4000;
  let sum = 0;
  for (let i = 0; i < strips; i += 1) sum += of(((i + 0.5) * to) / strips);
  return (sum * to) / strips;
}

/**
 * What a vane of the height feels of the dynamic pressure, with nothing of the closed forms: the layer is made thicker until
 * the momentum it lacks round the body is half the friction coefficient times the surface, and (u/U)^2 is summed up the vane.
 */
function summedImmersion(f: (share: number) => number, friction: number, place: number, height: number) {
  const radius = body.diameter / 2;
  const lacking = (thickness: number): number =>
    integral((y) => f(y / thickness) * (1 - f(y / thickness)) * (radius + y), thickness);
  let [low, high] = [0, 0.1];
  for (let i = 0; i < 30; i += 1) {
    const middle = (low + high) / 2;
    if (lacking(middle) < (friction * radius * place) / 2) low = middle;
    else high = middle;
  }
  return integral((y) => (y < low ? f(y / low) ** 2 : 1), height) / height;
}

describe('immersion', () => {
  const seventh = (share: number): number => share ** (1 / 7);
  const parabola = (share: number): number => 2 * share - share * share;

  it.each([0.003, 0.0127])('of a vane %d m high in a turbulent layer is the sum over strips', (height) => {
    const friction = bodyFriction(body, 'turbulent', REYNOLDS, body.trip);
    const summed = summedImmersion(seventh, friction, body.trip, height);
    expect(Math.abs(immersion(body, 'turbulent', REYNOLDS, body.trip, height) - summed)).toBeLessThan(
      1e-4 /* of 1: 4000 strips, whose first holds the steep foot of the profile */,
    );
  });

  it.each([0.001, 0.003, 0.0127])(
    'of a vane %d m high in a laminar layer is the sum over strips',
    (height) => {
      const friction = bodyFriction(body, 'laminar', REYNOLDS, body.trip);
      const summed = summedImmersion(parabola, friction, body.trip, height);
      expect(Math.abs(immersion(body, 'laminar', REYNOLDS, body.trip, height) - summed)).toBeLessThan(
        1e-4 /* of 1: 4000 strips, one of which the edge of the layer cuts */,
      );
    },
  );

  it('behind the transition a layer has the turbulent shape, ahead of it the laminar one', () => {
    // 5e5 lies 3.36 in behind the tip.
    const off = (layer: BoundaryLayer, place: number, shape: (share: number) => number): number =>
      immersion(body, layer, REYNOLDS, place, 0.0127) -
      summedImmersion(shape, bodyFriction(body, layer, REYNOLDS, place), place, 0.0127);
    expect(Math.abs(off('transition', 3.4 * INCH, seventh))).toBeLessThan(1e-4 /* of 1: 4000 strips */);
    expect(Math.abs(off('transition', 3.3 * INCH, parabola))).toBeLessThan(1e-4 /* of 1: 4000 strips */);
    expect(Math.abs(off('turbulent', 3.3 * INCH, seventh))).toBeLessThan(1e-4 /* of 1: 4000 strips */);
  });

  it('in a laminar layer counts friction up to the vane as laminar, whatever follows it', () => {
    const earlier = { ...body, trip: 10 * INCH };
    expect(immersion(earlier, 'laminar', REYNOLDS, body.trip, 0.0127)).toBe(
      immersion(body, 'laminar', REYNOLDS, body.trip, 0.0127),
    );
  });
});
