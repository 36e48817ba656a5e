import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const text = readFileSync(example, 'utf8');

/** The example with another tape, sight or hand. */
const setup = (changes: Readonly<Record<string, string>>): string =>
  Object.entries(changes).reduce((file, [from, to]) => {
    expect(file).toContain(from);
    return file.replace(from, to);
  }, text);

async function tape(file: string, ...argv: readonly string[]) {
  const { code, out, err, files } = await atTerminal(['tape', 's.yaml', '--out', 't.svg', ...argv], {
    's.yaml': file,
  });
  const svg = String(files.get('t.svg') ?? '');
  const of = (role: string) =>
    [...svg.matchAll(new RegExp(`<text class="${role}"[^>]*>([^<]*)</text>`, 'g'))].map(
      ([, words]) => words ?? '',
    );
  return { code, out: out.replaceAll(/\s+/g, ' '), err, svg, of };
}

describe('tape', () => {
  it('names the neighbours in metric by what they are, none twice', async () => {
    const { of, svg } = await tape(
      text,
      '--units',
      'metric',
      '--in',
      'metres',
      '--copies',
      '1',
      '--page',
      'letter',
    );
    // Two steps of 2 ft/s: 0.6096 and 1.2192 m/s by the definition of the foot.
    expect(of('heading')).toEqual(['−1.2 m/s', '−0.6 m/s', '86 m/s', '+0.6 m/s', '+1.2 m/s']);
    expect(of('lane').filter((words) => words.startsWith('−1.2 m/s: far'))).toHaveLength(1);
    expect(svg).toContain('width="215.9mm"');
  });

  it('shows a zero that was shot as shot, also on a strip in metres that begins beyond it', async () => {
    const { svg } = await tape(text, '--in', 'metres', '--copies', '1');
    expect(svg).toContain('class="zero-shot-line"');
    expect(svg).not.toContain('class="zero-line"');
  });

  it('says how good it is at round numbers of its own unit', async () => {
    const yards = await tape(text);
    expect(yards.out).toMatch(/^Good to ± [\d.]+ in at 20 yd, [\d.]+ in at 60 yd and [\d.]+ in at 100 yd\./);
    const metres = await tape(text, '--in', 'metres');
    expect(metres.out).toMatch(/^Good to ± [\d.]+ in at 20 m, [\d.]+ in at 60 m and [\d.]+ in at 100 m\./);
  });

  it('runs as the hand and the scale ask, unless the file says how', async () => {
    const form = async (changes: Readonly<Record<string, string>>) => {
      const { out } = await atTerminal(['tape', 's.yaml', '--out', 't.svg', '--json'], {
        's.yaml': setup(changes),
      });
      return JSON.parse(out).form;
    };
    expect(await form({})).toEqual({
      width_m: 0.012,
      length_m: null,
      ticks: 'left',
      far_at: 'bottom',
      numbers: 'upright',
      travel_ratio: 1.5,
    });
    expect(await form({ 'hand: right': 'hand: left' })).toMatchObject({ ticks: 'right', far_at: 'bottom' });
    expect(
      await form({
        'travel_ratio: 1.5': 'ticks: right, far_at: top, numbers: sideways, width: 10 mm, length: 70 mm',
      }),
    ).toEqual({
      width_m: 0.01,
      length_m: 0.07,
      ticks: 'right',
      far_at: 'top',
      numbers: 'sideways',
      travel_ratio: 1,
    });
  });

  it('says in check how the tape will run', async () => {
    const { out } = await atTerminal(['check', 's.yaml'], {
      's.yaml': setup({ 'hand: right': 'hand: left' }),
    });
    expect(out).toMatch(/Tape: 12\.0 mm wide, ticks on the right, long ranges at the bottom/);
  });

  it('ends where the slider ends, and says so', async () => {
    const short = setup({
      'zero_range: 20 yd': 'zero_range: 20 yd\n  travel_length: 30 mm\n  travel_above_zero: 2 mm',
    });
    const { out } = await tape(short);
    expect(out).toMatch(/The tape ends before (\d+) yd: the slider goes no lower \(sight\.travel_length\)/);
    const end = Number(/ends before (\d+) yd/.exec(out)?.[1]);
    const { out: marks } = await atTerminal(
      ['marks', 's.yaml', '--from', `${end - 1} yd`, '--to', `${end} yd`, '--every', '1 yd', '--json'],
      { 's.yaml': short },
    );
    const [last, first] = JSON.parse(marks).rows;
    expect(last.travel_m).toBeLessThanOrEqual(0.028);
    expect(first.travel_m).toBeGreaterThan(0.028);
  });

  it('ends where its place on the sight does, and says so', async () => {
    const { out } = await tape(setup({ 'travel_ratio: 1.5': 'travel_ratio: 1.5, length: 50 mm' }));
    expect(out).toMatch(
      /The tape ends before \d+ yd: its place on the sight is no longer \(sight\.tape\.length\)/,
    );
  });

  it('leaves near ranges out of a narrow strip, and says how wide it has to be', async () => {
    const { out } = await tape(setup({ 'travel_ratio: 1.5': 'width: 8 mm' }), '--from', '8yd');
    expect(out).toMatch(/need a tape 10 mm wide \(sight\.tape\.width\)/);
  });

  it('says the longest range that fits a sheet, which then does fit, or runs on to a second strip', async () => {
    const long = setup({ 'travel_ratio: 1.5': 'travel_ratio: 8' });
    const refused = await tape(long);
    expect(refused.code).not.toBe(0);
    expect(refused.svg).toBe('');
    const [, longest] =
      /Write --to "(\d+) yd", the longest range that fits, or --join/.exec(refused.err) ?? [];
    expect((await tape(long, '--to', `${longest} yd`)).code).toBe(0);
    expect((await tape(long, '--to', `${Number(longest) + 1} yd`)).code).not.toBe(0);
    const joined = await tape(long, '--join', '--copies', '1', '--neighbours', '0');
    expect(joined.code).toBe(0);
    expect(joined.svg).toContain('class="join-line"');
  });
});

describe('tapes for several places and builds', () => {
  const many = `${text}
places:
  - { name: low camp, altitude: 2000 ft, temperature: 60 degF }
  - { name: pass, altitude: 12000 ft, temperature: 20 degF }
builds:
  - { name: heavy, arrow: { parts: { point: { mass: 175 gr } } } }
`;
  const strips = async (...argv: readonly string[]) => {
    const { out } = await atTerminal(['tape', 's.yaml', '--out', 't.svg', '--json', ...argv], {
      's.yaml': many,
    });
    return JSON.parse(out).strips;
  };
  const names = (list: readonly { readonly build: unknown; readonly place: unknown }[]) =>
    list.map(({ build, place }) => [build, place]);

  it('draws one for every place asked for, or all of them, and every build at each', async () => {
    expect(names(await strips())).toEqual([[null, null]]);
    expect(names(await strips('--place', 'pass', '--place', 'low camp'))).toEqual([
      [null, 'pass'],
      [null, 'low camp'],
    ]);
    expect(names(await strips('--place', 'all', '--build', 'heavy'))).toEqual([
      ['heavy', 'low camp'],
      ['heavy', 'pass'],
    ]);
  });

  it('is for each what the question says of it alone', async () => {
    const [low, pass] = await strips('--place', 'all');
    for (const [strip, name] of [
      [low, 'low camp'],
      [pass, 'pass'],
    ] as const) {
      const { out } = await atTerminal(
        ['marks', 's.yaml', '--json', '--place', name, '--from', '90 yd', '--to', '90 yd', '--every', '1 yd'],
        { 's.yaml': many },
      );
      const along = strip.ticks.find(
        ({ range_m }: { range_m: number }) => Math.abs(range_m - 90 * 0.9144) < 1e-9 /* m */,
      );
      expect(Math.abs(along.along_m - 1.5 * JSON.parse(out).rows[0].travel_m)).toBeLessThan(1e-7 /* m */);
    }
  });

  it('names each strip by its build and place, and the neighbours go with the first', async () => {
    const { of, out } = await tape(many, '--place', 'all', '--build', 'heavy', '--copies', '1');
    expect(of('lane').filter((words) => words.includes('low camp'))).toHaveLength(5);
    expect(of('lane').filter((words) => words.includes('pass'))).toHaveLength(1);
    expect(of('caption')).toContain('heavy, pass');
    expect(out).toMatch(/heavy, low camp 20 to 100 yd, [\d.]+ mm long; heavy, pass 20 to 100 yd/);
  });

  it('names the places there are when one is not', async () => {
    const { code, err } = await tape(many, '--place', 'pas');
    expect(code).toBe(2);
    expect(err).toMatch(/Write --place "pass"/);
  });
});

describe('the tape that is on the sight', () => {
  it('that is not there is called by its option, and by what it is', async () => {
    for (const name of ['old.csv', 'old.yaml']) {
      const { err, code } = await tape(text, '--against', name);
      expect(err).toMatch(
        /^--against: old\.\w+: there is no such file\. Give the name of a file: .*rows.*\.\n$/,
      );
      expect(err).not.toMatch(/setup|quillpath new/);
      expect(code).toBe(2);
    }
    const { err } = await tape(text, '--against', 'examples');
    expect(err).toBe('--against: examples: is a folder. Name a file in it.\n');
  });

  const run = (argv: readonly string[], files: Readonly<Record<string, string>> = {}) =>
    atTerminal(['tape', 's.yaml', ...argv], { 's.yaml': text, ...files });

  it('is the tape itself when it was written by it: every number is its own', async () => {
    const { out: csv } = await run(['--csv']);
    const { out } = await run(['--against', 'old.csv', '--json'], { 'old.csv': csv });
    const { against } = JSON.parse(out);
    expect(against).toHaveLength(17);
    for (const { range_m, use_m, height_m } of against) {
      // Rows hold a thousandth of a millimetre of the tape; between 20 and 21 yd that is 0.001 yd.
      expect(Math.abs(use_m - range_m)).toBeLessThan(2e-3 /* m */);
      expect(Math.abs(height_m)).toBeLessThan(1e-4 /* m */);
    }
  });

  it('is the same whether it comes as its rows or as its speed', async () => {
    const slow = text.replace('speed: 283 fps', 'speed: 278 fps');
    const { out: csv } = await atTerminal(['tape', 'o.yaml', '--csv', '--uncalibrated'], { 'o.yaml': slow });
    const rows = JSON.parse(
      (await run(['--against', 'o.csv', '--json', '--uncalibrated'], { 'o.csv': csv })).out,
    ).against;
    // A fitted or stated speed is that at release; the file's was measured 3 ft on, where the arrow is a little slower.
    const speed = JSON.parse(
      (await atTerminal(['check', 'o.yaml', '--json', '--uncalibrated'], { 'o.yaml': slow })).out,
    ).launch_speed_mps;
    const { against } = JSON.parse(
      (await run(['--against-speed', `${speed} m/s`, '--json', '--uncalibrated'])).out,
    );
    for (const [i, { use_m, height_m }] of against.entries()) {
      expect(Math.abs(use_m - rows[i].use_m)).toBeLessThan(
        5e-3 /* m: the rows' thousandths of a millimetre */,
      );
      expect(Math.abs(height_m - rows[i].height_m)).toBeLessThan(5e-4 /* m on the target, the same */);
    }
    // A slower arrow's tape stands lower, so its own numbers hit high and shorter ones serve.
    expect(against.at(-1).height_m).toBeGreaterThan(0.1);
    expect(against.at(-1).use_m).toBeLessThan(against.at(-1).range_m - 1);
  });

  it('is told in the first sentence', async () => {
    const { out } = await run(['--against-speed', '279 fps']);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(
      /^The 279 fps tape is within 1 in up to \d+ yd; at 100 yd its own number hits [\d.]+ in high: set 9\d\.\d on it\./,
    );
  });

  it('is asked about in one way only, and refused by its line when it cannot be read', async () => {
    const both = await run(['--against', 'o.csv', '--against-speed', '279 fps'], { 'o.csv': 'x' });
    expect(both.err).toMatch(/--against and --against-speed name two old tapes/);
    const broken = await run(['--against', 'o.csv'], { 'o.csv': 'range (yd),along (mm)\n20,zero\n' });
    expect(broken.err).toMatch(/--against: line 2 has "zero" for along/);
    expect((await run(['--against', 'nowhere.csv'])).err).toMatch(/nowhere\.csv/);
  });
});
