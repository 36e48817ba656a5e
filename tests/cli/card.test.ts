import { describe, expect, it } from 'vitest';
import { readPdf } from '../unit/documents/read-pdf.ts';
import { atTerminal } from './terminal.ts';

const mountain = 'examples/mountain-hunt/setup.yaml';
const field = 'examples/field-course/setup.yaml';
const YARD = 0.9144;

const answer = async (...argv: string[]) => {
  const seen = await atTerminal([...argv, '--json']);
  expect(seen.err).toBe('');
  expect(seen.code).toBe(0);
  return JSON.parse(seen.out);
};
const card = (...argv: string[]) => answer('card', mountain, '--out', 'card.pdf', ...argv);

/** The pages of a PDF that a command wrote. */
async function written(...argv: string[]) {
  const { files, code, err } = await atTerminal(argv);
  expect([code, err]).toEqual([0, '']);
  const [content] = files.values();
  return (await readPdf(content instanceof Uint8Array ? content : new Uint8Array())).pages;
}

describe('card --json', () => {
  it('names its file and has a row for every range, with marks as `marks` gives them', async () => {
    const { files, rows } = await card();
    const marks = await answer('marks', mountain, '--from', '20yd', '--every', '5yd');
    expect(files).toEqual(['card.pdf']);
    expect(rows).toHaveLength(17);
    for (const [i, row] of rows.entries()) {
      const mark = marks.rows[i];
      expect(row.range_m).toBe(mark.range_m);
      for (const key of ['reading', 'reading_sd', 'travel_m', 'on_target_sd_m', 'highest_m'])
        expect(row[key]).toBeCloseTo(mark[key], 12);
    }
  });
  it.each([
    ['card', 'card.pdf'],
    ['fit', 'report.pdf'],
    ['tape', 'tape.pdf'],
  ])('%s advises a name of its own for another ending', async (command, name) => {
    const { code, err } = await atTerminal([command, mountain, '--out', 'x.doc']);
    expect(code).toBe(2);
    expect(err).toContain(`Write --out ${name} or`);
  });
  it('flies each row with the mark of its own range, as `fly` aimed there does', async () => {
    const { rows } = await card('--from', '60yd', '--to', '60yd');
    const { rows: flown } = await answer('fly', mountain, '--aim', '60yd', '--to', '60yd', '--every', '60yd');
    for (const key of ['time_s', 'speed_mps', 'energy_J', 'momentum_kgmps'])
      expect(Math.abs(rows[0][key] / flown[0][key] - 1)).toBeLessThan(
        1e-6 /* relative: the windage of the spin drift is set on one and not on the other */,
      );
  });
  it('drifts downwind by the lag rule and its entry into the wind, a bit more than twice as far in twice the wind', async () => {
    const { rows, crosswind_mps: wind } = await card();
    const { launch_speed_mps: speed } = await answer('check', mountain);
    const double = await card('--crosswind', '20 mph');
    const row = rows.at(-1);
    // Didion's rule, wind times (time - range/launch speed); the range counts from the bow, some 0.9 m ahead of the eye.
    const lag = wind * (row.time_s - (row.range_m - 0.9) / speed);
    expect(wind).toBeCloseTo(4.4704, 12);
    expect(Math.abs(row.wind_drift_m / lag - 1)).toBeLessThan(
      0.08 /* relative: the balance point's own place at release, and turning into the wind */,
    );
    // Drag grows a little with the airspeed, and the cross-flow on an arrow that stands across the wind with the square of it.
    const more = double.rows.at(-1).wind_drift_m / row.wind_drift_m;
    expect(more).toBeGreaterThan(2);
    expect(more).toBeLessThan(2.2);
  });
  it('tells cant and slopes as their own commands do', async () => {
    const { rows, slopes } = await card('--from', '40yd', '--to', '80yd', '--every', '20yd');
    const cant = await answer('cant', mountain, '--from', '40yd', '--to', '80yd', '--every', '20yd');
    for (const [i, row] of rows.entries())
      expect(row.cant_m_per_rad).toBeCloseTo(cant.level_error[i].lateral_m_per_rad, 9);
    const steep = await answer('slope', mountain, '--from', '60yd', '--to', '60yd');
    const at60 = slopes.filter((row: { range_m: number }) => Math.abs(row.range_m - 60 * YARD) < 1e-9);
    expect(at60).toHaveLength(8);
    for (const [i, row] of at60.entries()) {
      expect(row.mark_range_m).toBeCloseTo(steep.rows[i].mark_range_m, 4);
      expect(row.cut_m).toBeCloseTo(row.range_m - row.mark_range_m, 12);
    }
  });
  it('cuts round ranges in the unit shown, and none where marks turn back', async () => {
    const { slopes } = await answer(
      'card',
      field,
      '--out',
      'card.svg',
      '--from',
      '5m',
      '--to',
      '60m',
      '--every',
      '5m',
      '--units',
      'metric',
    );
    const ranges = new Set(slopes.map((row: { range_m: number }) => row.range_m));
    expect([...ranges]).toEqual([20, 30, 40, 50, 60]);
  });
});

describe('the card on paper', () => {
  it.each([
    ['a4', mountain, []],
    ['letter', mountain, []],
    ['a4', field, ['--from', '5yd', '--to', '60yd']],
    ['letter', field, ['--to', '60m', '--units', 'metric', '--crosswind', '5 m/s']],
  ] as const)('is one page of %s of %s', async (paper, setup, options) => {
    const pages = await written('card', setup, '--out', 'card.pdf', '--page', paper, ...options);
    expect(pages).toHaveLength(1);
    const texts = pages[0]?.texts ?? [];
    expect(Math.min(...texts.map(({ size }) => size))).toBeGreaterThan(2.2 /* mm: read without a glass */);
    const words = texts.map(({ text }) => text);
    for (const head of ['reading', 'travel', '± on target', 'time', 'speed', 'energy', 'momentum', 'cant 1°'])
      expect(words).toContain(head);
    expect(words.join(' ')).toMatch(/wind (10 mph|5 m\/s)/);
    expect(words.join(' ')).toMatch(/take this off the range/);
    expect(words.join(' ')).toMatch(/This arrow could carry up to \d+0 (yd|m)\b/);
  });
  it('is what its name says, and goes on over pages when there are many rows', async () => {
    const svg = await atTerminal(['card', mountain, '--out', 'card.svg', '--every', '1yd']);
    // One SVG file holds one page, so that it appears whole or not at all.
    expect([svg.code, svg.files.size]).toEqual([2, 0]);
    expect(svg.err).toMatch(/needs 2 pages, but an SVG file holds only one/);
  });
  it('leaves the marks aside when told to, and still trusts the file for the zero', async () => {
    const words = (await written('card', mountain, '--out', 'card.pdf', '--uncalibrated'))
      .flatMap(({ texts }) => texts)
      .map(({ text }) => text)
      .join(' ');
    expect(words).toMatch(/not fitted to any shot mark/);
    expect(words).not.toMatch(/No mark ties the readings to the arrow yet/);
  });
  it('says from where on marks lie below zero on the scale, and no such thing where none does', async () => {
    const shown = await atTerminal(['card', field, '--out', 'card.pdf']);
    expect(shown.out).toMatch(/below zero on the scale from 65 yd on/);
    const near = await atTerminal(['card', field, '--out', 'card.pdf', '--to', '60yd']);
    expect(near.out).not.toMatch(/below zero/);
  });
  it('serves the five numbers that marks need', async () => {
    const given = {
      'small.yaml': `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 300 gr }
launch: { speed: 281 fps }
sight: { peep_to_pin: 33 in }
`,
    };
    const seen = await atTerminal(['card', 'small.yaml', '--out', 'card.svg'], given);
    expect(seen.code).toBe(0);
    expect(seen.out).not.toMatch(/reading/);
    expect(String(seen.files.get('card.svg'))).toContain('± on target');
  });
});

describe('card, otherwise', () => {
  it('writes CSV with a row for every range', async () => {
    const { out } = await atTerminal(['card', mountain, '--out', 'card.pdf', '--csv']);
    const lines = out.trim().split('\r\n');
    expect(lines).toHaveLength(18);
    expect(lines[0]).toMatch(/^range \(yd\),reading \(scale\),travel \(mm\)/);
  });
  it.each([
    [['--out', 'card.png'], /\.pdf or/],
    [['--out', 'card.pdf', '--crosswind', '-3 mph'], /without a minus sign/],
    [['--out', 'card.pdf', '--to', '10yd'], /longer --to/],
    [['--out', 'card.pdf', '--angle-step', '50deg'], /--angle-step/],
    [['--out', 'card.pdf', '--steepest', '60deg', '--angle-step', '2deg'], /width of a table/],
    [[], /--out/],
  ] as const)('%j is refused with what to write, and nothing is written', async (options, why) => {
    const seen = await atTerminal(['card', mountain, ...options]);
    expect(seen.code).toBe(2);
    expect(seen.err).toMatch(why);
    expect([seen.out, seen.files.size]).toEqual(['', 0]);
  });
});

describe('fit --out', () => {
  it('says what it says without, and which file it wrote', async () => {
    const bare = await atTerminal(['fit', mountain]);
    const { out } = await atTerminal(['fit', mountain, '--out', 'report.pdf']);
    expect(out.replace('Wrote report.pdf.\n\n', '')).toBe(bare.out);
    expect((await answer('fit', mountain, '--out', 'report.svg')).files).toEqual(['report.svg']);
    expect((await answer('fit', mountain)).files).toEqual([]);
  });
  it.each([
    ['a4', mountain],
    ['letter', field],
  ] as const)('is one page of %s of %s: words first, tables, two plots', async (paper, setup) => {
    const pages = await written('fit', setup, '--out', 'report.pdf', '--page', paper);
    expect(pages).toHaveLength(1);
    const words = (pages[0]?.texts ?? []).map(({ text }) => text);
    const place = (what: RegExp) => words.findIndex((text) => what.test(text));
    const order = [
      /^The marks are good to/,
      /^Shoot next at/,
      /^Before and after the marks/,
      /^The shot marks beside the model/,
      /^How far each group lies/,
      /^How sure the mark of each range is/,
      /could carry/,
    ].map(place);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
    expect(words).toEqual(expect.arrayContaining(['measurement', 'in errors']));
  });
  it('says what is missing when nothing was shot, with one plot', async () => {
    const pages = await written('fit', mountain, '--uncalibrated', '--out', 'report.pdf');
    const words = (pages[0]?.texts ?? []).map(({ text }) => text).join(' ');
    expect(words).toMatch(/No marks yet/);
    expect(words).toMatch(/20 yd, then at 30 yd/);
    expect(words).not.toMatch(/How far each group lies/);
  });
  it('refuses a file it cannot draw', async () => {
    const seen = await atTerminal(['fit', mountain, '--out', 'report.png']);
    expect([seen.code, seen.out]).toEqual([2, '']);
  });
});

describe('cards for a pocket', () => {
  it('hold what the card says: readings on one side, wind and cuts of the slopes on the other', async () => {
    const seen = await atTerminal(['card', mountain, '--pocket', '--out', 'p.svg', '--json']);
    const svg = String(seen.files.get('p.svg'));
    const numbers = [...svg.matchAll(/<text class="card-number"[^>]*>([^<]*)</g)].map(([, text]) => text);
    const { rows, slopes } = JSON.parse(seen.out);
    for (const { reading } of rows) expect(numbers).toContain(reading.toFixed(1));
    const sixty = slopes.find(
      (each: { range_m: number; slope_rad: number }) =>
        Math.abs(each.range_m - 54.864) < 1e-6 /* m */ &&
        Math.abs(each.slope_rad - Math.PI / 6) < 1e-9 /* rad */,
    );
    const cut = (54.864 - sixty.mark_range_m) / 0.9144;
    expect(numbers.slice(numbers.lastIndexOf('60'))).toContain(cut.toFixed(1));
  });
});
