import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/cli/version.ts';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const json = async (...argv: string[]) => {
  const seen = await atTerminal([...argv, '--json']);
  expect(seen.err).toBe('');
  expect(seen.code).toBe(0);
  return JSON.parse(seen.out);
};
const YARD = 0.9144;

describe('fly --json', () => {
  it('has a row for every step with the keys of the contract', async () => {
    const { rows } = await json('fly', example, '--to', '60yd', '--every', '10yd');
    expect(rows.map((row: { range_m: number }) => row.range_m)).toEqual(
      [10, 20, 30, 40, 50, 60].map((n) => Number((n * YARD).toFixed(10))),
    );
    expect(Object.keys(rows[0])).toEqual([
      'range_m',
      'time_s',
      'speed_mps',
      'drop_m',
      'height_m',
      'drift_m',
      'spin_radps',
      'energy_J',
      'momentum_kgmps',
    ]);
  });
  it('crosses the line of sight at the aimed range', async () => {
    const { rows } = await json('fly', example, '--aim', '40yd', '--to', '40yd', '--every', '40yd');
    expect(Math.abs(rows[0].height_m)).toBeLessThan(1e-6 /* m */);
  });
  it('energy and momentum belong to speed and mass', async () => {
    const { rows } = await json('fly', example, '--to', '50yd', '--every', '50yd');
    const { energy_J: energy, momentum_kgmps: momentum, speed_mps: speed } = rows[0];
    expect(Math.abs(momentum / speed / (463 * 64.79891e-6) - 1)).toBeLessThan(1e-12 /* relative, rounding */);
    expect(Math.abs((2 * energy) / momentum / speed - 1)).toBeLessThan(1e-12 /* relative, rounding */);
  });
});

describe('marks --json', () => {
  it('counts travel from the zero range and carries an error for every mark', async () => {
    const answer = await json('marks', example, '--from', '20yd', '--to', '80yd', '--every', '20yd');
    expect(answer.zero_range_m).toBeCloseTo(20 * YARD, 12);
    expect(Math.abs(answer.rows[0].travel_m)).toBeLessThan(1e-8 /* m */);
    for (const row of answer.rows) {
      expect(row.reading_sd).toBeGreaterThan(0);
      expect(row.on_target_sd_m).toBeGreaterThan(0);
    }
    expect(answer.rows[3].near_crossing_m).toBeGreaterThan(1.5);
  });
  it('knows the near field: 4 yd has no nearer crossing and a mark beyond 40 yd', async () => {
    const { rows } = await json('marks', example, '--from', '4yd', '--to', '40yd', '--every', '36yd');
    expect(rows[0].near_crossing_m).toBeNull();
    expect(rows[0].travel_m).toBeGreaterThan(rows[1].travel_m);
  });
  it('agrees with the flat-fire closed form of this bow and arrow to 0.3 % of travel', async () => {
    // Textbook flat fire: drop = (g/v^2)(exp(2kx) - 1 - 2kx)/(4k^2), k = rho CD S/2m; the pin lies h + drop over the range below
    // the eye.
    const {
      launch_speed_mps: v,
      drag_coefficient: CD,
      mass_kg: m,
      diameter_m: d,
      balance_m: balance,
      air,
    } = await json('check', example, '--uncalibrated');
    const k = (air.density_kgpm3 * CD * (Math.PI / 4) * d ** 2) / (2 * m);
    const [h, E, f] = [4.55 * 0.0254, 34.5 * 0.0254, (28.5 - 1.75 - 6.25) * 0.0254 + balance];
    const { rows, zero_range_m: zero } = await json(
      'marks',
      example,
      '--from',
      '20yd',
      '--every',
      '10yd',
      '--uncalibrated',
    );
    const below = (range: number): number => {
      let angle = 0;
      for (let i = 0; i < 50; i += 1) {
        const run = range - f * Math.cos(angle) - h * Math.sin(angle);
        const vx = v * Math.cos(angle);
        const drop = ((9.80665 / vx ** 2) * (Math.exp(2 * k * run) - 1 - 2 * k * run)) / (4 * k ** 2);
        angle = Math.atan((drop + h * Math.cos(angle) - f * Math.sin(angle)) / run);
      }
      return E * Math.tan(angle);
    };
    for (const row of rows.slice(1)) {
      const travel = below(row.range_m) - below(zero);
      expect(Math.abs(row.travel_m / travel - 1)).toBeLessThan(
        0.003 /* relative: lift, the drag curve and the vertical speed are left out */,
      );
    }
  });
  it('leaves the marks aside when told to', async () => {
    const [with_, without] = await Promise.all([
      json('marks', example),
      json('marks', example, '--uncalibrated'),
    ]);
    expect(with_.calibrated).toBe(true);
    expect(without.calibrated).toBe(false);
    // What a day did to all marks alike stays in both: four marks take off two fifths and more.
    expect(without.rows.at(-1).on_target_sd_m).toBeGreaterThan(1.67 * with_.rows.at(-1).on_target_sd_m);
    // The file's word for the zero still holds: half a foot at 100 yd, not the yards of a scale that nothing ties to the bow.
    expect(without.rows.at(-1).on_target_sd_m).toBeLessThan(0.15 /* m */);
  });
});

describe('fit --json', () => {
  it('gives parameters, residuals and the next range by the contract', async () => {
    const fit = await json('fit', example);
    expect(fit.parameters.map(({ name }: { name: string }) => name)).toEqual([
      'launch_speed',
      'drag_scale',
      'peep_height',
      'scale_ratio',
      'scale_offset',
    ]);
    for (const parameter of fit.parameters)
      expect(Object.keys(parameter)).toEqual(
        expect.arrayContaining(['value', 'sd', 'prior_value', 'prior_sd', 'verdict']),
      );
    expect(fit.residuals).toHaveLength(4);
    for (const { reading, predicted, residual } of fit.residuals)
      expect(Math.abs(reading - predicted - residual)).toBeLessThan(1e-12 /* scale units, rounding */);
    expect(fit.next_range_m).toBeGreaterThan(0);
  });
});

describe('tape', () => {
  it('writes a PDF and lists a tick a yard, counted from the zero range', async () => {
    const seen = await atTerminal(['tape', example, '--out', 'x/tape.pdf', '--json']);
    const { files, ticks } = JSON.parse(seen.out);
    expect(files).toEqual(['x/tape.pdf']);
    expect(ticks).toHaveLength(81);
    expect(Math.abs(ticks[0].along_m)).toBeLessThan(1e-8 /* m */);
    expect(
      Buffer.from(seen.files.get('x/tape.pdf') ?? '')
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    const { rows } = await json('marks', example, '--from', '60yd', '--to', '60yd', '--every', '1yd');
    // The example's tape turns 1.5 times as far as its pin.
    expect(Math.abs(ticks[40].along_m - 1.5 * rows[0].travel_m)).toBeLessThan(1e-8 /* m */);
  });
  it('draws the same as SVG', async () => {
    const seen = await atTerminal([
      'tape',
      example,
      '--out',
      'tape.svg',
      '--in',
      'metres',
      '--page',
      'letter',
    ]);
    expect(seen.code).toBe(0);
    expect(String(seen.files.get('tape.svg'))).toContain('width="215.9mm"');
  });
  it('ends where the arrow would touch the sight, and says so', async () => {
    const low = readFileSync(example, 'utf8').replace(
      'housing_below_pin: 0.9 in',
      'housing_below_pin: 2.6 in',
    );
    const seen = await atTerminal(['tape', 'low.yaml', '--out', 'tape.pdf'], { 'low.yaml': low });
    expect(seen.out).toMatch(/tape ends before \d+ yd/);
  });
});

describe('what is wrong', () => {
  it('in a file is told all at once on standard error with exit code 2, and nothing is written', async () => {
    const broken = readFileSync(example, 'utf8')
      .replace('4.55 in', '4.55')
      .replace('zero_range', 'zero_rang')
      .replace('mass: 463 gr', 'mass: 4 kg');
    const seen = await atTerminal(['tape', 'b.yaml', '--out', 'tape.pdf'], { 'b.yaml': broken });
    expect(seen.code).toBe(2);
    expect(seen.out).toBe('');
    expect(seen.files.size).toBe(0);
    expect(seen.err).toMatch(/b\.yaml:8:\d+ {2}bow\.peep_height: "4\.55" has no unit/);
    expect(seen.err).toMatch(/zero_rang/);
    expect(seen.err).toMatch(/zero_range/);
    expect(seen.err).toMatch(/"4 kg" is above the limit/);
    expect(seen.err).toMatch(/3 problems/);
  });
  it('is one JSON document when JSON was asked for', async () => {
    const seen = await atTerminal(['marks', 'b.yaml', '--json'], { 'b.yaml': 'bow: {}' });
    expect(seen.out).toBe('');
    const { error } = JSON.parse(seen.err);
    expect(error.code).toBe('setup');
    expect(error.where.length).toBeGreaterThan(2);
    expect(error.where[0]).toMatchObject({
      file: 'b.yaml',
      line: expect.any(Number),
      path: expect.any(String),
    });
  });
  it.each([
    ['no such file', ['marks', 'nowhere.yaml'], /no such file/],
    ['a range that is a speed', ['marks', example, '--to', '60 mph'], /--to: "60 mph" is a speed.*60 yd/s],
    ['a range that may be two', ['marks', example, '--to', '1,250'], /--to: "1,250" has a comma/],
    ['a step of nothing', ['fly', example, '--every', '0 yd'], /--every/],
    ['rows that run backwards', ['marks', example, '--from', '60yd', '--to', '20yd'], /--to/],
    ['a tape in an unknown format', ['tape', example, '--out', 'tape.doc'], /\.pdf/],
    ['a range inside the bow', ['marks', example, '--from', '0.5 yd', '--to', '1 yd'], /leaves the bow/],
    ['an unknown command', ['lunch'], /unknown command/],
    ['an unknown option', ['fly', example, '--fast'], /unknown option/],
    ['both JSON and CSV', ['fly', example, '--json', '--csv'], /cannot be used with/],
  ])('%s is refused with exit code 2', async (_, argv, message) => {
    const seen = await atTerminal(argv);
    expect(seen.code).toBe(2);
    expect(seen.err).toMatch(message);
    expect(seen.files.size).toBe(0);
  });
  const feeble = {
    'f.yaml': readFileSync(example, 'utf8')
      .replace('speed: 283 fps', 'speed: 70 fps')
      .replace(/marks:[\s\S]*/, ''),
  };
  it('ranges that no mark reaches fail with exit code 1', async () => {
    const seen = await atTerminal(['marks', 'f.yaml', '--from', '200 yd', '--to', '300 yd'], feeble);
    expect(seen.code).toBe(1);
    expect(seen.out).toBe('');
  });
  it('a slow bow gets the marks it reaches, and is told where they end', async () => {
    const seen = await atTerminal(['marks', 'f.yaml', '--every', '10yd'], feeble);
    expect(seen.code).toBe(0);
    expect(seen.out).toMatch(/cannot reach 60 yd with any sight setting/);
    // Without drag 70 ft/s carries v^2/g = 51 yd.
    expect(
      JSON.parse((await atTerminal(['marks', 'f.yaml', '--every', '10yd', '--json'], feeble)).out).rows,
    ).toHaveLength(5);
  });
  it('one reading written down wrongly is warned of by every command that rests on it', async () => {
    const slipped = { 's.yaml': readFileSync(example, 'utf8').replace('reading: 26.9', 'reading: 62.9') };
    for (const command of [['marks'], ['fly'], ['tape', '--out', 't.svg', '--anyway']]) {
      const seen = await atTerminal([command[0] ?? '', 's.yaml', ...command.slice(1)], slipped);
      expect(seen.out).toMatch(/Warning: [\s\S]*60\s+yd\s+mark\s+is\s+left\s+out/);
    }
    const { warnings, marks_left_out } = JSON.parse(
      (await atTerminal(['marks', 's.yaml', '--json'], slipped)).out,
    );
    expect(warnings[0]).toContain('60 yd mark');
    expect(marks_left_out).toHaveLength(1);
    expect(marks_left_out[0]).toMatchObject({ reading: 62.9 });
  });
  it('an unknown scale with marks at one range only says what is missing', async () => {
    const one = `bow: { peep_height: 4.6 in }\narrow: { diameter: 0.246 in, mass: 452 gr }\nlaunch: { speed: 281 fps }
sight: { peep_to_pin: 33 in, scale: { travel_per_unit: unknown, increases: down } }\nmarks: [{ range: 60 yd, reading: 30.9 }]\n`;
    const seen = await atTerminal(['marks', 'o.yaml'], { 'o.yaml': one });
    expect(seen.out.replace(/\s+/g, ' ')).toMatch(/readings at two different ranges are needed/);
  });
});

describe('new', () => {
  it('writes a starter file that the other commands accept', async () => {
    const { files, code } = await atTerminal(['new', 'mine.yaml']);
    expect(code).toBe(0);
    const text = String(files.get('mine.yaml'));
    expect(text).toContain('#');
    expect((await atTerminal(['check', 'mine.yaml'], { 'mine.yaml': text })).code).toBe(0);
    expect((await atTerminal(['tape', 'mine.yaml', '--out', 't.pdf'], { 'mine.yaml': text })).code).toBe(0);
  });
  it('does not replace a file unless told to', async () => {
    expect((await atTerminal(['new', example])).code).toBe(2);
    expect((await atTerminal(['new', example, '--force'])).code).toBe(0);
  });
});

it('the version is the package’s', async () => {
  expect(JSON.parse(readFileSync('package.json', 'utf8')).version).toBe(VERSION);
  expect((await atTerminal(['--version'])).out.trim()).toBe(VERSION);
});
