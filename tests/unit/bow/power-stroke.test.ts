import { expect, it } from 'vitest';
import { powerStroke } from '../../../src/bow/power-stroke.ts';

it('is the draw length less 1.75 in and the brace height: 30 in and 6.5 in leave 21.75 in', () =>
  // By hand: 21.75 x 0.0254 = 0.55245 m.
  expect(Math.abs(powerStroke(30 * 0.0254, 6.5 * 0.0254) - 0.55245)).toBeLessThan(1e-15 /* m */));

it('is below 0 where the string would have no way to go: 8 in and 7 in leave -0.75 in', () =>
  // By hand: -0.75 x 0.0254 = -0.01905 m.
  expect(Math.abs(powerStroke(8 * 0.0254, 7 * 0.0254) + 0.01905)).toBeLessThan(1e-15 /* m */));
