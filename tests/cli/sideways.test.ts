import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const YARD = 0.9144;
const DEGREE = Math.PI / 180;
const setup = readFileSync(example, 'utf8');

const json = async (argv: readonly string[], given: Readonly<Record<string, string>> = {}) => {
  const seen = await atTerminal([...argv, '--json'], given);
  expect(seen.err).toBe('');
  expect(seen.code).toBe(0);
  return JSON.parse(seen.out);
};
const text = async (argv: readonly string[], given: Readonly<Record<string, string>> = {}) => {
  const seen = await atTerminal(argv, given);
  expect(seen.err).toBe('');
  expect(seen.code).toBe(0);
  return seen.out;
};

/** The whole report on one line: where it folds does not matter. */
const whole = async (
  argv: readonly string[],
  given: Readonly<Record<string, string>> = {},
): Promise<string> => (await text([...argv, '--all'], given)).replace(/\s+/g, ' ');

/** The example with left and right exchanged: helical, place on the Earth, and what was shot. */
const mirrored = setup
  .replace('turn: right', 'turn: left')
  .replace('latitude: 44 deg', 'latitude: -44 deg')
  .replaceAll(
    /lateral: (-?)([\d.]+) in/g,
    (_, sign, size) => `lateral: ${sign === '-' ? '' : '-'}${size} in`,
  );

describe('cant --json', () => {
  it('holds the keys of the contract', async () => {
    const answer = await json(['cant', example]);
    expect(answer.effects).toHaveLength(11);
    expect(Object.keys(answer.effects[0].rows[0])).toEqual(['range_m', 'lateral_m', 'vertical_m']);
    expect(Math.abs(answer.effects[0].cant_rad + 5 * DEGREE)).toBeLessThan(
      1e-12 /* rad, rounding of the text */,
    );
    for (const key of ['lean_rad', 'lean_sd_rad', 'residual_max_m', 'worth_doing', 'reason'])
      expect(answer.advice).toHaveProperty(key);
    for (const key of ['gyroscopic_m', 'magnus_ceiling_m', 'measured_m'])
      expect(answer.drift[key]).toHaveLength(answer.drift.range_m.length);
  });

  it('a clockwise cant goes right and low, and a right helical left', async () => {
    const { effects, drift } = await json(['cant', example]);
    const { rows, cant_rad } = effects.at(-1);
    const { lateral_m, vertical_m } = rows.at(-1);
    expect(lateral_m).toBeGreaterThan(0.3);
    // The launch turns about the line of sight by c: h sin c across, h (1 - cos c) down, so that down is tan(c/2) of across.
    const down = -Math.tan(cant_rad / 2);
    expect(Math.abs(vertical_m / lateral_m / down - 1)).toBeLessThan(
      0.01 /* the bow's own left and right turn too */,
    );
    expect(drift.gyroscopic_m.at(-1)).toBeLessThan(0);
    expect(drift.magnus_ceiling_m.at(-1)).toBeLessThan(drift.gyroscopic_m.at(-1));
  });

  it('a mirrored bow gives mirrored advice exactly', async () => {
    const [ours, theirs] = [
      await json(['cant', example]),
      await json(['cant', 'm.yaml'], { 'm.yaml': mirrored }),
    ];
    expect(theirs.advice.lean_rad).toBe(-ours.advice.lean_rad);
    expect(theirs.advice.lean_sd_rad).toBe(ours.advice.lean_sd_rad);
    expect(theirs.advice.residual_max_m).toBe(ours.advice.residual_max_m);
    for (const key of ['gyroscopic_m', 'magnus_ceiling_m', 'coriolis_m', 'measured_m'])
      expect(theirs.drift[key]).toEqual(ours.drift[key].map((value: number) => 0 - value));
    const turned = ours.effects.toReversed();
    for (const [i, { cant_rad, rows }] of theirs.effects.entries()) {
      expect(cant_rad).toBe(0 - turned[i].cant_rad);
      expect(rows.map((row: { lateral_m: number }) => row.lateral_m)).toEqual(
        turned[i].rows.map((row: { lateral_m: number }) => 0 - row.lateral_m),
      );
    }
  });

  it('without groups that tell left from right there is nothing measured, and no lean', async () => {
    const silent = setup.replaceAll(/, lateral: -?[\d.]+ in/g, '').replace('latitude: 44 deg\n', '');
    const { drift, advice, sideways } = await json(['cant', 's.yaml'], { 's.yaml': silent });
    expect(drift.measured_m.every((value: unknown) => value === null)).toBe(true);
    expect(sideways.groups).toBe(0);
    expect(advice.worth_doing).toBe(false);
    expect(advice.lean_rad).toBeGreaterThan(0);
  });

  it('the turning Earth asks for a lean of its own where the place is known', async () => {
    const silent = setup.replaceAll(/, lateral: -?[\d.]+ in/g, '');
    const { advice } = await json(['cant', 's.yaml'], { 's.yaml': silent });
    expect(advice.lean_rad).toBeLessThan(0);
    expect(await whole(['cant', 's.yaml'], { 's.yaml': silent })).toMatch(/rotation of the Earth/);
  });

  it('leaves the groups aside when told to', async () => {
    const { drift, calibrated } = await json(['cant', example, '--uncalibrated']);
    expect(calibrated).toBe(false);
    expect(drift.measured_m[0]).toBeNull();
  });

  it('a curve that many arrows show is worth a lean that takes it out', async () => {
    // 2 deg of lean in the bow: about 5.3 in right at 80 yd, with windage as it was set at 20 yd.
    const shot = [20, 40, 60, 80].map((range) => {
      const off = { 20: 0, 40: 0.62, 60: 1.92, 80: 3.9 }[range];
      return `  - { range: ${range} yd, reading: 1, arrows: 60, group: 4 in, lateral: ${off} in }`;
    });
    // The archer wrote down that the air was still.
    const still = 'wind: { speed: 0 mph, speed_sd: 0.3 mph }\n';
    const curved = `${setup.replace(/marks:[\s\S]*/, '')}${still}marks:\n${shot.join('\n')}\n`;
    const seen = await text(['cant', 'c.yaml', '--uncalibrated'], { 'c.yaml': curved });
    expect(seen).toMatch(/^Not worth doing/);
    const quiet = curved.replaceAll('reading: 1, ', '');
    const { advice } = await json(['cant', 'q.yaml'], { 'q.yaml': quiet });
    expect(advice).toMatchObject({ worth_doing: true, reason_code: 'worth doing' });
    expect(advice.lean_rad).toBeLessThan(-1 * DEGREE);
    const told = await whole(['cant', 'q.yaml'], { 'q.yaml': quiet });
    expect(told).toMatch(/^Worth doing: turn the sight bar [\d.]+° counterclockwise as you see it/);
    expect(told).toContain('its top to the left, its foot to the right');
  });

  it('the same curve where nothing is said of the wind may be one, and the answer says what tells them apart', async () => {
    const shot = [20, 40, 60, 80].map((range) => {
      const off = { 20: 0, 40: 0.62, 60: 1.92, 80: 3.9 }[range];
      return `  - { range: ${range} yd, arrows: 60, group: 4 in, lateral: ${off} in }`;
    });
    const file = { 'w.yaml': setup.replace(/marks:[\s\S]*/, `marks:\n${shot.join('\n')}\n`) };
    const { advice, sideways } = await json(['cant', 'w.yaml'], file);
    expect(advice).toMatchObject({ worth_doing: false, reason_code: 'not shown', could_be_wind: true });
    expect(sideways.crosswinds).toMatchObject([{ date: null, verdict: 'not separable' }]);
    const told = await whole(['cant', 'w.yaml'], file);
    expect(told).toMatch(/crosswind of [\d.]+ mph from the left that nobody wrote down/);
    for (const way of ['still air', 'both sides', 'another day', 'plumb line']) expect(told).toContain(way);
  });
});

describe('cant', () => {
  it('says the verdict first, the shapes that cannot be told apart, and what would tell them', async () => {
    const seen = await whole(['cant', example]);
    expect(seen).toMatch(/^Not worth doing: /);
    expect(seen).toMatch(/arrows at 100 yd and as many at 20 yd/);
    expect(seen).toMatch(/look the same in these groups/);
    expect(seen).toMatch(/upside down/);
    expect(seen).toContain('⠒⠒⠒');
  });
  it('writes every cant and range as CSV', async () => {
    const lines = (await text(['cant', example, '--csv'])).trim().split('\r\n');
    expect(lines).toHaveLength(1 + 11 * 9);
    expect(lines[0]).toBe(
      'cant (°),range (yd),lateral (in),vertical (in),"lateral, zero set again (in)","vertical, zero set again (in)"',
    );
  });
  it('refuses a step that gives no table', async () => {
    const seen = await atTerminal(['cant', example, '--step', '0 deg']);
    expect(seen.code).toBe(2);
    expect(seen.err).toMatch(/--step/);
  });
});

describe('slope', () => {
  it('--json gives the level mark by range and slope, by the contract', async () => {
    const { rows } = await json(['slope', example, '--from', '60yd', '--to', '60yd']);
    expect(rows).toHaveLength(8);
    for (const row of rows) {
      expect(Object.keys(row)).toEqual(
        expect.arrayContaining(['range_m', 'slope_rad', 'mark_range_m', 'travel_m']),
      );
      expect(row.mark_range_m).toBeLessThan(row.range_m);
    }
  });
  it('the mark is the level one: its travel is that of marks at that range', async () => {
    const { rows } = await json(['slope', example, '--from', '60yd', '--to', '60yd']);
    const range = `${rows[0].mark_range_m} m`;
    const level = await json(['marks', example, '--from', range, '--to', range]);
    expect(Math.abs(level.rows[0].travel_m - rows[0].travel_m)).toBeLessThan(1e-8 /* m */);
  });
  it('says first what to set for a common slope; the whole has cuts, third axis and cosine rule', async () => {
    const seen = await whole(['slope', example]);
    expect(seen).toMatch(/^At 40 yd on a slope of 20° set [\d.]+ yd uphill and [\d.]+ yd downhill\./);
    expect(seen).toMatch(/At 80 yd and 40° uphill set .* the cosine rule says /);
    expect(seen).toMatch(/For the pocket/);
    expect(seen).toMatch(/third axis/);
  });
  it('writes CSV', async () => {
    expect((await text(['slope', example, '--csv'])).split('\r\n')).toHaveLength(1 + 8 * 7 + 1);
  });
});

describe('misjudge', () => {
  it('--json: room on both sides and chances that mending raises', async () => {
    const { rows, ring_m: ring } = await json(['misjudge', example, '--ring', '8in']);
    expect(ring).toBeCloseTo(0.2032, 12);
    for (const row of rows) {
      expect(row.long_m).toBeGreaterThan(0);
      expect(row.hit_chance).toBeLessThanOrEqual(row.hit_chance_range_known);
      expect(row.hit_chance).toBeGreaterThan(0);
      expect(row.hit_chance_range_known).toBeLessThanOrEqual(1);
    }
  });
  it('a larger ring leaves more room', async () => {
    const [small, large] = [
      await json(['misjudge', example, '--ring', '5in']),
      await json(['misjudge', example, '--ring', '10in']),
    ];
    for (const [i, row] of small.rows.entries()) expect(large.rows[i].long_m).toBeGreaterThan(row.long_m);
  });
  it('says the last range first, and writes CSV', async () => {
    expect(await whole(['misjudge', example])).toMatch(/^At 60 yd a guess may be .* short or .* long/);
    expect((await text(['misjudge', example, '--csv'])).split('\r\n')).toHaveLength(11);
  });
  it.each([
    ['--ring', '0 in'],
    ['--guess', '50 %'],
    ['--cant', '-1 deg'],
  ])('refuses %s %s', async (option, value) => {
    const seen = await atTerminal(['misjudge', example, `${option}=${value}`]);
    expect(seen.code).toBe(2);
    expect(seen.err).toMatch(option);
  });
});

describe('wind', () => {
  it('--json: twelve directions, left from 3 o’clock, and the tape in other air', async () => {
    const { effects, airs } = await json(['wind', example]);
    expect(effects).toHaveLength(12);
    expect(Math.abs(effects[3].from_rad - 90 * DEGREE)).toBeLessThan(1e-12 /* rad, rounding of the text */);
    expect(effects[3].rows.at(-1).lateral_m).toBeLessThan(-0.2);
    expect(Math.abs(effects[3].rows.at(-1).range_m - 100 * YARD)).toBeLessThan(
      1e-9 /* m, rounding of the text */,
    );
    expect(airs.length).toBeGreaterThan(4);
    expect(airs[0].rows.at(-1).vertical_m).toBeLessThan(0);
  });
  it('half the wind drifts a little less than half as far', async () => {
    const at = async (speed: string) =>
      (await json(['wind', example, '--speed', speed])).effects[9].rows.at(-1).lateral_m;
    // By 1 to 3 %: the cross-flow on an arrow that stands across the wind grows with the square of it.
    const share = (await at('5 mph')) / (await at('10 mph'));
    expect(share).toBeLessThan(0.5);
    expect(share).toBeGreaterThan(0.485);
  });
  it('says first what a wind from the side does, then whether the tape holds; writes CSV', async () => {
    const seen = await whole(['wind', example]);
    expect(seen).toMatch(
      /^10 mph from the side: [\d.]+ in at 40 yd, [\d.]+ in at 60 yd and [\d.]+ in at 100 yd\./,
    );
    expect(seen).toMatch(/The tape does not stay accurate everywhere/);
    expect((await text(['wind', example, '--csv'])).split('\r\n')).toHaveLength(1 + 12 * 5 + 1);
  });
  it('refuses a wind below nought', async () => {
    const seen = await atTerminal(['wind', example, '--speed=-3 mph']);
    expect(seen.code).toBe(2);
  });
});
