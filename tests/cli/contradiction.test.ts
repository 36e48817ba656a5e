import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const slipped = { 's.yaml': readFileSync(example, 'utf8').replace('reading: 26.9', 'reading: 62.9') };

it.each(['tape', 'card'])(
  'a %s is refused while marks contradict one another, and is a draft on demand',
  async (name) => {
    const refused = await atTerminal([name, 's.yaml', '--out', 't.svg'], slipped);
    expect(refused.code).toBe(1);
    expect(refused.files.size).toBe(0);
    expect(refused.err).toContain('The 60 yd mark');
    expect(refused.err).toContain('--anyway');
    const asJson = await atTerminal([name, 's.yaml', '--out', 't.svg', '--json'], slipped);
    expect(JSON.parse(asJson.err).error.code).toBe('contradiction');
    const drawn = await atTerminal([name, 's.yaml', '--out', 't.svg', '--anyway'], slipped);
    expect(drawn.code).toBe(0);
    const sheet = String(drawn.files.get('t.svg'));
    expect(sheet).toContain('60 yd mark');
    // Three copies and two neighbours on each side, each of them more than once; a page of a card at least once.
    expect(sheet.split('DRAFT').length - 1).toBeGreaterThanOrEqual(name === 'tape' ? 7 : 1);
    const right = await atTerminal([name, example, '--out', 't.svg']);
    expect(String(right.files.get('t.svg'))).not.toContain('DRAFT');
  },
);
it('a fit says what to check, and not where to shoot next, while marks contradict one another', async () => {
  const { out } = await atTerminal(['fit', 's.yaml'], slipped);
  expect(out).not.toContain('Shoot next');
  expect(out).toContain('check what is named above');
  const { contradiction } = JSON.parse((await atTerminal(['fit', 's.yaml', '--json'], slipped)).out);
  expect(contradiction).toMatchObject({ kind: 'one mark' });
  expect(JSON.parse((await atTerminal(['fit', example, '--json'])).out).contradiction).toBeNull();
});
