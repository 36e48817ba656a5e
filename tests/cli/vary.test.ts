import { describe, expect, it } from 'vitest';
import { ownThread } from '../../src/reports/tasks.ts';
import { variedKey } from '../../src/reports/vary/axes.ts';
import { OUTPUT_NAMES } from '../../src/reports/vary/outputs.ts';
import { setupKeys } from '../../src/setup/keys.ts';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const json = async (...argv: string[]) => {
  const seen = await atTerminal(['vary', example, ...argv, '--json']);
  expect(seen.err).toBe('');
  expect(seen.code).toBe(0);
  return JSON.parse(seen.out);
};
const refused = async (...argv: string[]) => {
  const seen = await atTerminal(['vary', example, ...argv]);
  expect(seen.code).toBe(2);
  expect(seen.out).toBe('');
  return seen.err;
};

describe('variedKey', () => {
  it.each([
    ['a.b=100gr:200gr:50gr', ['100 gr', '150 gr', '200 gr'], 'gr'],
    ['a=0.1:0.3:0.1', ['0.1', '0.2', '0.3'], ''],
    ['a=1 deg:2:0.5', ['1 deg', '1.5 deg', '2 deg'], 'deg'],
    ['a=-5deg:5deg:5deg', ['-5 deg', '0 deg', '5 deg'], 'deg'],
    ['a=20 yd, 30 yd', ['20 yd', '30 yd'], 'yd'],
  ])('reads %s', (text, values, unit) => {
    const key = variedKey(text);
    expect(key.values).toEqual(values);
    expect(key.unit).toBe(unit);
    expect(key.numbers).toHaveLength(values.length);
  });
  it('takes words too', () => {
    expect(variedKey('arrow.parts.point.shape=field,bullet')).toMatchObject({
      values: ['field', 'bullet'],
      numbers: null,
    });
  });
  it.each([
    ['nothing', /does not give a key/],
    ['a=1gr:2mm:1gr', /mixes units/],
    ['a=2:1:1', /does not lead from low to high/],
    ['a=1:2:0', /does not lead from low to high/],
    ['a=1:x:1', /not low:high:step/],
    ['a=0:1:1e-9', /that would be/],
  ])('refuses %s', (text, message) => expect(() => variedKey(text)).toThrow(message));
});

describe('the first line', () => {
  const first = async (...argv: string[]): Promise<string> => {
    const { out } = await atTerminal(['vary', example, ...argv]);
    return (out.split('\n\n')[0] ?? '').replaceAll('\n', ' ');
  };
  it('says what the sweep comes to, and the key itself once though it is shown as well', async () => {
    const told = await first('--over', 'arrow.mass=440gr:460gr:20gr', '--show', 'mass,launch_speed');
    expect(told).toMatch(/^Mass 440 to 460 gr: launch speed [\d.]+ to [\d.]+ ft\/s\.$/);
  });
  it('answers for a single value', async () => {
    const told = await first('--over', 'arrow.mass=440gr', '--show', 'mass,launch_speed,drop');
    expect(told).toMatch(/^Mass 440 gr: launch speed [\d.]+ ft\/s and drop at 60 yd [\d.]+ in\.$/);
  });
  it('says when nothing that is shown changes', async () =>
    expect(await first('--over', 'arrow.mass=440gr:460gr:20gr', '--show', 'mass')).toBe(
      'Mass 440 to 460 gr: nothing else that is shown changes.',
    ));
});

describe('vary --help', () => {
  it('names keys that are often varied, each of them a value of a setup', async () => {
    const { out } = await atTerminal(['vary', '--help']);
    const named = /often varied[^:]*:\n([\s\S]*?)\n\n/.exec(out)?.[1]?.match(/[a-z_.]+/g) ?? [];
    expect(named.length).toBeGreaterThan(10);
    const values = setupKeys().flatMap(({ path, kind }) => (kind === 'value' ? [path] : []));
    expect(named.filter((name) => !values.includes(name))).toEqual([]);
  });
});

describe('vary --json', () => {
  it('shoots heavier points slower, lower and with more momentum', async () => {
    const { rows } = await json('--over', 'arrow.parts.point.mass=100gr:200gr:25gr');
    expect(rows.map(({ set }: { set: object }) => Object.values(set)[0])).toEqual([
      '100 gr',
      '125 gr',
      '150 gr',
      '175 gr',
      '200 gr',
    ]);
    for (const [i, row] of rows.entries()) {
      if (i === 0) continue;
      expect(row.launch_speed_mps).toBeLessThan(rows[i - 1].launch_speed_mps);
      expect(row.launch_momentum_kgmps).toBeGreaterThan(rows[i - 1].launch_momentum_kgmps);
      expect(row.rows[0].drop_m).toBeGreaterThan(rows[i - 1].rows[0].drop_m);
    }
  });
  it('leaves what is not varied as every other command has it', async () => {
    const { rows } = await json('--over', 'arrow.parts.point.mass=125gr,150gr', '--at', '20yd,60yd');
    const fly = JSON.parse(
      (await atTerminal(['fly', example, '--to', '60yd', '--every', '20yd', '--json'])).out,
    );
    expect(Math.abs(rows[0].rows[1].drop_m - fly.rows[2].drop_m)).toBeLessThan(1e-7 /* m */);
    expect(Math.abs(rows[0].rows[0].speed_mps - fly.rows[0].speed_mps)).toBeLessThan(1e-7 /* m/s */);
  });
  it('varies two keys, the second running fastest', async () => {
    const { rows } = await json('--over', 'air.altitude=7000ft,8000ft', '--over', 'wind.speed=0mph,10mph');
    // The example gives its station's pressure, which altitude does not touch: wind alone moves the arrow.
    expect(rows).toHaveLength(4);
    expect(rows[0].rows[0].drift_m).toBe(rows[2].rows[0].drift_m);
    expect(rows[1].rows[0].drift_m).not.toBe(rows[0].rows[0].drift_m);
  });
  it('takes what it varies as set, not as calibrated', async () => {
    const { rows } = await json(
      '--over',
      'launch.speed=270fps,300fps',
      '--over',
      'launch.measured_at=0ft,3ft',
    );
    for (const row of rows)
      expect(
        Math.abs(row.launch_speed_mps / 0.3048 - Number.parseFloat(row.set['launch.speed'])),
      ).toBeLessThan(0.5 /* ft/s: carried back from the chronograph */);
  });
  it('lets the energy follow draw weight and power stroke', async () => {
    const { rows } = await json(
      '--over',
      'bow.peak_draw_weight=60lbf,70lbf',
      '--over',
      'bow.draw_length=27.5in,28.5in',
    );
    // Base: 70 lbf, 28.5 in, so 20.5 in of power stroke.
    const base = rows[3].launch_speed_mps;
    expect(Math.abs(rows[0].launch_speed_mps / base - Math.sqrt((60 / 70) * (19.5 / 20.5)))).toBeLessThan(
      1e-9 /* relative, rounding of the text */,
    );
  });
  it('tells why a combination cannot be, and goes on', async () => {
    const { rows } = await json(
      '--over',
      'arrow.parts.vanes.root_chord=0.5in,2.2in',
      '--over',
      'arrow.parts.vanes.tip_chord=0.4in,0.9in',
    );
    expect(rows[1].failure).toMatch(/upper edge is longer/);
    expect(rows[3].failure).toBeNull();
  });
});

describe('vary', () => {
  it('has in its help every name that can be shown, and no other', async () => {
    const { out } = await atTerminal(['vary', '--help']);
    const listed = /What can be shown:\n {2}of the build: ([\s\S]*?)\n {2}by range: ([\s\S]*?)\n\n/.exec(out);
    const names = [listed?.[1], listed?.[2]].flatMap((text = '') => text.split(/,\s+/));
    expect(names).toEqual(OUTPUT_NAMES);
  });
  it('prints the keys, what was asked for, and a plot', async () => {
    const { out } = await atTerminal([
      'vary',
      example,
      '--over',
      'arrow.parts.vanes.angle=1deg:3deg:1deg',
      '--show',
      'spin_per_metre,energy',
      '--at',
      '40yd',
      '--all',
    ]);
    expect(out).toMatch(/vanes angle {2}spin, settled {2}energy at 40 yd/);
    expect(out).toContain('energy at 40 yd (ft lbf)');
  });
  it('gives a spreadsheet its numbers bare', async () => {
    const { out } = await atTerminal([
      'vary',
      example,
      '--over',
      'arrow.parts.point.mass=100gr,150gr',
      '--show',
      'mass',
      '--csv',
    ]);
    expect(out.split('\r\n')).toEqual(['point mass (gr),mass (gr)', '100,438', '150,488', '']);
  });
  it('tells a key that is set from what comes of it', async () => {
    const { out } = await atTerminal([
      'vary',
      example,
      '--over',
      'arrow.mass=400gr,500gr',
      '--show',
      'mass',
      '--csv',
    ]);
    expect(out.split('\r\n')).toEqual(['mass set (gr),mass (gr)', '400,400', '500,500', '']);
  });
  it('says what to write for what it does not know', async () => {
    expect(await refused('--over', 'arrow.mas=1gr')).toMatch(/arrow\.mas/);
    expect(await refused('--over', 'arrow.mass=1gr')).toMatch(/below the limit/);
    expect(await refused('--over', 'arrow.mass=400gr', '--show', 'enrgy')).toMatch(/Write energy/);
    expect(await refused('--over', 'slope=1deg', '--over', 'slope=1deg', '--over', 'slope=1deg')).toMatch(
      /at most 2/,
    );
    expect(await refused()).toMatch(/--over/);
  });
});

it('one thread answers in the order of the jobs and tells how far it is', async () => {
  const told: number[] = [];
  const { readFileSync } = await import('node:fs');
  const job = {
    text: readFileSync(example, 'utf8'),
    path: example,
    uncalibrated: true,
    axes: [{ name: 'arrow.parts.point.mass', values: ['100 gr', '150 gr'] }],
    ranges: [30],
    crosswind: 4,
  };
  const answers = await ownThread.map(
    'vary',
    [
      { ...job, from: 0, to: 1 },
      { ...job, from: 1, to: 2 },
    ],
    (n) => told.push(n),
  );
  expect(told).toEqual([1, 2]);
  const masses = answers.flat().map((cell) => ('failure' in cell ? 0 : (cell.facts.mass ?? 0)));
  expect(masses[1]).toBeGreaterThan(masses[0] ?? 0);
});

it('refuses what was shot: a varied mark would change nothing', async () => {
  const seen = await atTerminal([
    'vary',
    'examples/mountain-hunt/setup.yaml',
    '--over',
    'marks.2.reading=20,27',
  ]);
  expect(seen.code).toBe(2);
  expect(seen.err).toMatch(/marks\.2\.reading is what was shot/);
});
