import { describe, expect, it } from 'vitest';
import { ask } from '../../../src/reports/ask.ts';
import type { Block } from '../../../src/reports/report.ts';
import { openSetup } from '../../../src/setup/open.ts';
import { starterSetup } from '../../../src/setup/starter.ts';
import { EXAMPLE } from '../setup/example-text.ts';

/** The list of parts of the example weighs 28.5 x 9.5 + 20 + 125 + 10 + 3 x 7 + 8 = 454.75 gr, by hand. */
const UNMARKED = EXAMPLE.slice(0, EXAMPLE.indexOf('marks:')).replace('balance: 17.9 in', '');

const warningsOf = (blocks: readonly Block[]): readonly string[] =>
  blocks.flatMap((block) => (block.kind === 'warning' ? [block.text] : []));
const checked = async (text: string) =>
  warningsOf((await ask('check', openSetup(text, 'setup.yaml'))).blocks);

describe('a list of parts that is not the arrow that was weighed is a warning with its likely cause', () => {
  it.each([
    ['a few grains of glue are none', UNMARKED.replace('452 gr ', '458 gr '), []],
    [
      '36 gr too few',
      UNMARKED.replace('452 gr ', '491 gr '),
      [/^36 gr .* not in its parts \(491 gr weighed, 455 gr listed\)\. A wrap, glue/],
    ],
    [
      '3 % of a light arrow: 292.3 gr by hand, 9.7 gr too few',
      UNMARKED.replace('452 gr ', '302 gr ').replace('9.5 gpi', '3.8 gpi'),
      [/^10 gr .* not in its parts/],
    ],
    [
      'the set in place of one vane',
      UNMARKED.replace('mass: 7 gr', 'mass: 21 gr'),
      [/one vane: was it the whole set\?/],
    ],
    [
      'another shaft',
      UNMARKED.replace('9.5 gpi', '10.5 gpi'),
      [/^the parts weigh 31 gr more .* before the cut/],
    ],
  ])('%s', async (_, text, patterns) => {
    const found = await checked(text);
    expect(found).toHaveLength(patterns.length);
    for (const [i, pattern] of patterns.entries()) expect(found[i]).toMatch(pattern);
  });

  it('and so is a balance point that its parts do not have', async () => {
    const at = (balance: string) =>
      checked(EXAMPLE.slice(0, EXAMPLE.indexOf('marks:')).replace('17.9 in', balance));
    expect(await at('17.9 in')).toEqual([]);
    expect(await at('18.9 in')).toEqual([
      expect.stringMatching(/balances 0\.\d in forward of .* at the front/),
    ]);
  });
});

describe('values that are still the template’s are named', () => {
  it('by check, all of them', async () => {
    const found = (await checked(starterSetup({ units: 'imperial' }))).join('\n');
    for (const key of ['bow.peep_height', 'launch.speed', 'arrow.parts.point.mass'])
      expect(found).toContain(key);
  });

  it('by marks and tape, as far as marks rest on them, one by one', async () => {
    const text = starterSetup({ units: 'imperial' })
      .replace('281 fps', '274 fps')
      .replace('452 gr', '417 gr');
    for (const name of ['marks', 'tape'] as const) {
      const { blocks } = await ask(name, openSetup(text, 'setup.yaml'), { to: '30 yd' });
      expect(warningsOf(blocks).join('\n')).toContain(
        "bow.peep_height, arrow.diameter, sight.peep_to_pin are still the example's: these are not your marks.",
      );
    }
  });
});
