import { expect, it } from 'vitest';
import { once } from '../../../src/numerics/once.ts';

it.each([[7], [undefined], [null]])('%s is made when it is first asked for, and once', (value) => {
  let made = 0;
  const asked = once(() => {
    made += 1;
    return value;
  });
  expect(made).toBe(0);
  expect([asked(), asked(), made]).toEqual([value, value, 1]);
});
