import { describe, expect, it } from 'vitest';
import { ask } from '../../../../src/reports/ask.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { huntingSetup } from '../../../reference/hunting-setup.ts';

const withSpine = (deflection: number, more = '') =>
  openSetup(
    huntingSetup({}, more).replace(
      'mass_per_length: 8.5 gpi',
      `mass_per_length: 8.5 gpi, deflection: ${deflection}`,
    ),
    'setup.yaml',
  );
const builds = (build: string) => `builds:\n  - { name: old one, ${build} }\n`;
const spine = async (setup: ReturnType<typeof openSetup>) =>
  ((await ask('check', setup)).data as { spine: unknown }).spine;

describe('spine, as far as mechanics go', () => {
  it('is not told without the static deflection of the shaft', async () => {
    expect(await spine(openSetup(huntingSetup({}), 'setup.yaml'))).toBeNull();
  });
  it('a shaft of 340 acts 13 % weaker than one of 300, and 300 makes them alike: loads go as the deflection', async () => {
    const good = 'shoots_well: true, arrow: { parts: { shaft: { deflection: 300 } } }';
    expect(await spine(withSpine(340, builds(good)))).toMatchObject({
      against: {
        name: 'old one',
        acts: 'weaker',
        ratio: expect.closeTo(340 / 300, 6),
        same_deflection: expect.closeTo(300, 4),
      },
    });
  });
  it('25 gr more up front act weaker: what lies ahead of the middle presses on it', async () => {
    const lighter = 'shoots_well: true, arrow: { parts: { point: { mass: 100 gr } } }';
    expect(await spine(withSpine(300, builds(lighter)))).toMatchObject({ against: { acts: 'weaker' } });
  });
  it('without a build that is known to shoot well there is nothing to compare with', async () => {
    expect(
      await spine(withSpine(300, builds('arrow: { parts: { point: { mass: 100 gr } } }'))),
    ).toMatchObject({ against: null });
    const { blocks } = await ask('check', withSpine(300));
    expect(JSON.stringify(blocks)).toContain('the chart of the shaft');
  });
});

describe('marks that the log has overtaken', () => {
  const shot = (date: string) =>
    openSetup(
      huntingSetup(
        {},
        [
          `marks:\n  - { range: 20 yd, reading: 12.4, date: ${date} }\n  - { range: 60 yd, reading: 31.9, date: ${date} }`,
          'tuning:\n  log:\n    - { date: 2026-04-18, step: draw, draw_length: 29 in, match: 29 in, changed: [draw_length] }\n',
        ].join('\n'),
      ).replace(
        'peep_to_pin: 33 in',
        'peep_to_pin: 33 in, scale: { travel_per_unit: 1 mm, increases: down, at_zero: 12.4 }',
      ),
      'setup.yaml',
    );
  it.each(['check', 'marks'] as const)('%s names them, the change and its day', async (name) => {
    const { blocks, data } = await ask(name, shot('2026-04-10'));
    const told = blocks.flatMap((block) => (block.kind === 'warning' ? [block.text] : [])).join('\n');
    expect(told).toMatch(
      /^Stale: the marks at 20 yd, 60 yd were shot before the draw length, and the peep with it changed \(2026-04-18/m,
    );
    expect(data).toMatchObject({ stale_marks_m: [expect.closeTo(18.288, 9), expect.closeTo(54.864, 9)] });
    expect((await ask(name, shot('2026-04-20'))).data).toMatchObject({ stale_marks_m: [] });
  });
});
