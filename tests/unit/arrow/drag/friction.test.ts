import { expect, it } from 'vitest';
import {
  laminarCylinder,
  laminarPlate,
  mixedFriction,
  turbulentCylinder,
  turbulentPlate,
} from '../../../../src/arrow/drag/friction.ts';

const R = 2.73e6;
const laminar = (share: number) => laminarPlate(share * R);
const turbulent = (share: number) => turbulentPlate(share * R);

it('a layer that never turns is laminar, one that turns at once turbulent', () => {
  expect(mixedFriction(1, laminar, turbulent)).toBe(laminarPlate(R));
  expect(mixedFriction(2, laminar, turbulent)).toBe(laminarPlate(R));
  expect(mixedFriction(0, laminar, turbulent)).toBe(turbulentPlate(R));
});

it('a mixed layer is the sum of a laminar front and a turbulent rear', () => {
  // Front: 0.2 of the area at the laminar mean. Rear: what the turbulent law gives from 0.2 to 1.
  const byParts = 0.2 * laminar(0.2) + (turbulent(1) - 0.2 * turbulent(0.2));
  expect(mixedFriction(0.2, laminar, turbulent)).toBeCloseTo(byParts, 15);
});

it('a short cylinder has the friction of a plate', () => {
  expect(laminarCylinder(R, 0)).toBe(laminarPlate(R));
  expect(turbulentCylinder(R, 0)).toBe(turbulentPlate(R));
});

it("an arrow's shaft has 14 % more laminar friction than a plate", () => {
  // xi = 8 x 127.3 / sqrt(2.73e6) = 0.616: between the tabulated 1.145 at 0.6 and 1.189 at 0.8.
  expect(laminarCylinder(R, 127.3) / laminarPlate(R)).toBeCloseTo(1.149, 3);
});

it('the shaft of the reference carries the friction worked out for it, to 1 %', () => {
  // Area 4 l/d on the section: laminar 0.409 as a plate, turbulent 1.94, and 2.22 with the long-cylinder term.
  const onSection = 4 * 127.3;
  expect(Math.abs((laminarPlate(R) * onSection) / 0.409 - 1)).toBeLessThan(0.01 /* relative */);
  expect(Math.abs((turbulentPlate(R) * onSection) / 1.94 - 1)).toBeLessThan(0.01 /* relative */);
  expect(Math.abs((turbulentCylinder(R, 127.3) * onSection) / 2.22 - 1)).toBeLessThan(0.01 /* relative */);
});
