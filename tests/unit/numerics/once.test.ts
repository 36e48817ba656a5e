import { expect, it } from 'vitest';
import { once, oncePer, oncePerNumber } from '../../../src/numerics/once.ts';

it.each([[7], [undefined], [null]])('%s is made when it is first asked for, and once', (value) => {
  let made = 0;
  const asked = once(() => {
    made += 1;
    return value;
  });
  expect(made).toBe(0);
  expect([asked(), asked(), made]).toEqual([value, value, 1]);
});

it('what is made of a thing is made once for each thing, and kept when it is nothing', () => {
  const asked: object[] = [];
  const nameOf = oncePer((of: { readonly name: string | undefined }) => {
    asked.push(of);
    return of.name;
  });
  const [peep, nameless, other] = [{ name: 'peep' }, { name: undefined }, { name: 'peep' }];
  expect([peep, nameless, peep, other, nameless].map(nameOf)).toEqual([
    'peep',
    undefined,
    'peep',
    'peep',
    undefined,
  ]);
  expect(asked).toEqual([peep, nameless, other]);
});

it('the same of numbers, 0 and what is nothing among them', () => {
  const asked: number[] = [];
  const half = oncePerNumber((of) => {
    asked.push(of);
    return of === 3 ? undefined : of / 2;
  });
  expect([0, 4, 0, 3, 3].map(half)).toEqual([0, 2, 0, undefined, undefined]);
  expect(asked).toEqual([0, 4, 3]);
});
