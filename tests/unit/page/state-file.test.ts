import { expect, it } from 'vitest';
import { setupsIn, stateText } from '../../../src/page/keep/state-file.ts';

const kept = ['a', 'b'].map((id) => ({
  id,
  name: `${id}.yaml`,
  text: `title: ${id}\n`,
  revision: 3,
  changed: 0,
}));

it('all setups of a device come out of one file as they went in', () =>
  expect(setupsIn('all.json', stateText(kept, 'metric'))).toEqual(
    kept.map(({ name, text }) => ({ name, text })),
  ));

it('any other file is one setup, whatever is in it', () => {
  for (const content of ['title: x', '{', '[]', '{"setups":1}', 'null'])
    expect(setupsIn('x.json', content)).toEqual([{ name: 'x.json', text: content }]);
  expect(setupsIn('x.json', '{"setups":[{"name":1},null,{"name":"a","text":"b"}]}')).toEqual([
    { name: 'a', text: 'b' },
  ]);
});
