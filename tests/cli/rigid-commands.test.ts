import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal, atTerminalAnew } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const json = async (...argv: string[]) => {
  const seen = await atTerminal([...argv, '--json']);
  expect(seen.err).toBe('');
  expect(seen.code).toBe(0);
  return JSON.parse(seen.out);
};
/** The example without its parts: mass, diameter and balance alone. */
const bare = readFileSync(example, 'utf8').replace(/ {2}parts:[\s\S]*?(?=launch:)/, '');

describe('swing --json', () => {
  it('tells margin, swing, and every start with its misses and holes', async () => {
    const answer = await json('swing', example, '--to', '60yd', '--every', '30yd');
    expect(answer.static_margin_m / answer.margin_share).toBeCloseTo(28.25 * 0.0254, 3);
    expect(answer.swing_wavelength_m).toBeGreaterThan(answer.static_margin_m);
    expect(answer.margin_too_small).toBe(false);
    expect(answer.starts.map(({ name }: { name: string }) => name)).toEqual([
      'clean',
      'tail left',
      'tail high',
      'nock travel left',
    ]);
    for (const { misses, paper } of answer.starts) {
      expect(misses.length).toBe(2);
      expect(paper.map(({ range_m }: { range_m: number }) => range_m / 0.9144)).toEqual([2, 3, 4]);
    }
  });

  it('twice the angle is about twice the miss', async () => {
    const miss = async (angle: string) =>
      (await json('swing', example, '--angle', angle, '--to', '40yd', '--every', '40yd')).starts[1].misses[0]
        .right_m;
    expect((await miss('0.2 deg')) / (await miss('0.1 deg'))).toBeCloseTo(2, 1);
  });

  it('text leads with the margin, and shows a table, a plot and the paper', async () => {
    const { out } = await atTerminal(['swing', example, '--units', 'metric', '--all']);
    expect(out).toMatch(/^This arrow steers itself well: the centre of pressure is [\d.]+ mm/);
    expect(out).toMatch(/tail left +1\.00/);
    expect(out).toContain("o'clock");
  });
});

describe('broadhead --json', () => {
  it('the broadhead has the smaller margin and goes further with nock travel', async () => {
    const answer = await json('broadhead', example, '--to', '100yd', '--every', '50yd');
    expect(answer.broadhead.static_margin_m).toBeLessThan(0.5 * answer.field.static_margin_m);
    expect(answer.broadhead.mass_kg).toBeCloseTo(answer.field.mass_kg, 12);
    expect(answer.starts[3].rows[1].right_m).toBeGreaterThan(answer.starts[1].rows[1].right_m);
  });

  it('takes the blades of the file when it describes them, and compares the other way round', async () => {
    const bladed = readFileSync(example, 'utf8').replace(
      'shape: field, length: 1.3 in',
      'shape: fixed_blade, length: 1.3 in, blades: { count: 2, length: 1 in, cutting_diameter: 1 in, thickness: 0.03 in }',
    );
    const seen = await atTerminal(['broadhead', 'b.yaml', '--json'], { 'b.yaml': bladed });
    const answer = JSON.parse(seen.out);
    expect(answer.blades.count).toBe(2);
    expect(answer.broadhead.static_margin_m).toBeLessThan(answer.field.static_margin_m);
  });

  it('warns of a head that takes most of the margin', async () => {
    const { out } = await atTerminal([
      'broadhead',
      example,
      '--blades',
      '4',
      '--cutting-diameter',
      '1.25 in',
    ]);
    expect(out).toContain('Warning: below 15 %');
  });
});

describe('heads with blades, told with what nobody has measured', () => {
  const blades = 'blades: { count: 3, length: 1.1 in, cutting_diameter: 1.125 in, thickness: 0.03 in }';
  const withBuild = `${readFileSync(example, 'utf8')}
builds:
  - { name: broadhead, arrow: { parts: { point: { shape: fixed_blade, ${blades} } } } }
`;
  const given = { 'both.yaml': withBuild };
  const INCH = 0.0254; // m

  it('broadhead and compare say so in their first line', async () => {
    const answers = [
      await atTerminal(['broadhead', example]),
      await atTerminal(['compare', 'both.yaml', '--arrows', '0'], given),
    ];
    for (const { out } of answers)
      expect(out.replace(/\s+/g, ' ').split('. ')[0]).toMatch(/not measured on arrows/i);
  });

  it('give one answer: compare within two of its errors of broadhead at every range', async () => {
    const ranges = ['--to', '100yd', '--every', '20yd'];
    const { starts, measured_on_arrows } = await json('broadhead', example, ...ranges);
    expect(measured_on_arrows).toBe(false);
    const argv = ['compare', 'both.yaml', '--arrows', '0', '--from', '20yd', ...ranges, '--json'];
    const { differences } = JSON.parse((await atTerminal(argv, given)).out);
    const clean = starts[0].rows;
    expect(clean).toHaveLength(5);
    for (const [i, { with_base_mark_m: told }] of differences[0].rows.entries()) {
      expect(Math.abs(told.difference - clean[i].high_m)).toBeLessThan(2 * told.sd);
      expect(Math.abs(told.difference - clean[i].high_m)).toBeLessThan(
        0.2 * INCH + 0.05 * Math.abs(clean[i].high_m),
      );
      expect(clean[i].high_sd_m / told.sd).toBeGreaterThan(0.5);
      expect(clean[i].high_sd_m / told.sd).toBeLessThan(2);
    }
  });

  it('two blades have a span by how they stand; three have none', async () => {
    const argv = ['--to', '60yd', '--every', '60yd'];
    const two = await json('broadhead', example, '--blades', '2', ...argv);
    const [row] = two.starts[1].rows;
    const names = row.stands.map(({ stand }: { stand: string }) => stand);
    expect(names).toEqual(['upright', 'flat', 'leaning right', 'leaning left']);
    const rights = row.stands.map(({ right_m }: { right_m: number }) => right_m);
    expect(Math.max(...rights) - Math.min(...rights)).toBeGreaterThan(0.3 * INCH);
    const three = await json('broadhead', example, ...argv);
    expect(three.starts[1].rows[0].stands).toEqual([]);
    const { out } = await atTerminal(['broadhead', example, '--blades', '2', '--all', ...argv]);
    expect(out).toContain('Two blades push from where they stand');
  });

  it('check warns of a small margin with its error', async () => {
    const bladed = readFileSync(example, 'utf8').replace('shape: field,', `shape: fixed_blade, ${blades},`);
    const seen = await atTerminal(['check', 'b.yaml'], { 'b.yaml': bladed });
    expect(seen.out).toMatch(
      /Warning: the static margin is [\d.]+ in ± [\d.]+ in, \d+ % of the arrow's length/,
    );
    const answer = JSON.parse((await atTerminal(['check', 'b.yaml', '--json'], { 'b.yaml': bladed })).out);
    expect(answer.margin_too_small).toBe(true);
    expect(answer.static_margin_sd_m / answer.static_margin_m).toBeGreaterThan(0.3);
    const { out } = await atTerminal(['check', example]);
    expect(out).not.toContain('Warning: the static margin');
  });
});

describe('the entry into the wind', () => {
  it('is counted where the parts are known, and said to be left out where they are not, with its size', async () => {
    expect((await json('wind', example, '--every', '40yd')).wind_entry_counted).toBe(true);
    const argv = ['wind', 'bare.yaml', '--every', '40yd'];
    const { out } = await atTerminal(argv, { 'bare.yaml': bare });
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /Warning: Left out, because the file does not list the parts.*30 to 50 % at 20 yd/,
    );
    const answer = JSON.parse((await atTerminal([...argv, '--json'], { 'bare.yaml': bare })).out);
    expect(answer.wind_entry_counted).toBe(false);
  });

  it('warns of a wind in the file that blows on an arrow of unknown parts', async () => {
    const windy = `${bare}\nwind: { speed: 5 mph }\n`;
    const { out } = await atTerminal(['marks', 'windy.yaml', '--every', '40yd'], { 'windy.yaml': windy });
    expect(out).toContain('Warning: The wind of the file. Left out');
  });
});

describe('scatter --json', () => {
  const small = ['--arrows', '24', '--every', '40yd', '--from', '40yd', '--to', '80yd'];

  it('gives groups by range for the own vanes and the other ones, with every cause', async () => {
    const answer = await json('scatter', example, ...small);
    expect(answer.builds.map(({ turn }: { turn: string }) => turn)).toEqual(['right', 'none']);
    for (const { rows } of answer.builds) {
      expect(rows.length).toBe(2);
      expect(rows[1].group_m).toBeGreaterThan(rows[0].group_m);
      const shares = rows[0].causes.map(({ share }: { share: number }) => share);
      expect(shares.length).toBe(7);
      expect(shares.reduce((sum: number, share: number) => sum + share, 0)).toBeCloseTo(1, 12);
    }
  });

  it('is the same for the same seed and another for another', async () => {
    const [a, b, c] = await Promise.all([
      json('scatter', example, ...small),
      atTerminalAnew(['scatter', example, ...small, '--json']),
      json('scatter', example, ...small, '--seed', '2'),
    ]);
    expect(JSON.parse(b.out)).toEqual(a);
    expect(c.builds[0].rows[0].group_m).not.toBe(a.builds[0].rows[0].group_m);
  });

  it('straight vanes in the file are held against a helical', async () => {
    const straight = readFileSync(example, 'utf8').replace('angle: 2.5 deg, turn: right', 'turn: none');
    const seen = await atTerminal(['scatter', 's.yaml', '--json', ...small], { 's.yaml': straight });
    expect(JSON.parse(seen.out).builds.map(({ turn }: { turn: string }) => turn)).toEqual(['none', 'right']);
  });

  it('with broadheads the helical groups better', async () => {
    const { builds, broadhead } = await json('scatter', example, ...small, '--arrows', '96', '--broadhead');
    expect(broadhead).toBe(true);
    expect(builds[0].rows[1].group_m).toBeLessThan(0.6 * builds[1].rows[1].group_m);
  });
});

describe('what cannot be answered', () => {
  it.each([['swing'], ['broadhead'], ['scatter']])(
    '%s asks for the parts of an arrow that has none',
    async (name) => {
      const seen = await atTerminal([name, 'bare.yaml'], { 'bare.yaml': bare });
      expect(seen.code).toBe(2);
      expect(seen.out).toBe('');
      expect(seen.err).toMatch(/arrow\.parts/);
    },
  );

  it.each([
    ['fewer arrows than a group', ['scatter', example, '--arrows', '24', '--group', '30'], /--arrows/],
    ['a group of one', ['scatter', example, '--group', '1'], /from 2 to 1000/],
    ['a nock travel that is a length', ['swing', example, '--nock-travel', '1 in'], /--nock-travel/],
  ])('%s is refused with exit code 2', async (_, argv, message) => {
    const seen = await atTerminal(argv);
    expect(seen.code).toBe(2);
    expect(seen.err).toMatch(message);
  });
});
