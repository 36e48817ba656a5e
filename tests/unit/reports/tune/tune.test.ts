import { describe, expect, it } from 'vitest';
import { ask } from '../../../../src/reports/ask.ts';
import type { Report } from '../../../../src/reports/report.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { huntingSetup } from '../../../reference/hunting-setup.ts';

const INCH = 0.0254;
const setup = openSetup(
  huntingSetup({}).replace('peep_to_pin: 33 in', 'peep_to_pin: 33 in, extension: 5.75 in'),
  'setup.yaml',
);
const log = (...entries: readonly string[]) => ({
  name: 'evening.yaml',
  text: `log:\n${entries.map((entry) => `  - { date: 2026-04-18, ${entry} }\n`).join('')}`,
});
const tune = (entries: readonly string[], step?: string): Promise<Report> =>
  ask('tune', setup, {
    ...(step === undefined ? {} : { step }),
    ...(entries.length === 0 ? {} : { log: log(...entries) }),
  });
const firstLine = ({ blocks: [first] }: Report): string => (first?.kind === 'verdict' ? first.text : '');

const TORQUE = [
  'step: torque, range: 50 yd, extension: 6.5 in, left: [1.47 in, 3.27 in, 2.94 in], right: [-2.35 in, -4.54 in, -1.62 in]',
  'step: torque, range: 50 yd, extension: 4.5 in, left: [-1.98 in, -3.49 in, -3.72 in], right: [0.52 in, 1.23 in, 3.51 in]',
];
const BARE = (mm: number, inches: number) =>
  `step: bare, range: 30 yd, rest_right: ${mm} mm, fletched: { arrows: 3, lateral: 0 in, vertical: 0 in }, ` +
  `bare: { arrows: 3, lateral: ${inches} in, vertical: 0.5 in }`;
const LINE = (mm: number, ...hits: readonly number[]) =>
  `step: line, range: 60 yd, line: vertical, rest_right: ${mm} mm, off_line: [${hits.map((hit) => `${hit} in`).join(', ')}]`;

/** Every step with a round, and the keys that programs read. */
const STEPS: Readonly<Record<string, readonly [entries: readonly string[], keys: readonly string[]]>> = {
  nock: [
    ['step: nock, serving: [0.1095 in, 0.110 in], held: 100 gr'],
    [
      'serving_mean_m',
      'serving_se_m',
      'band',
      'low_band',
      'high_band',
      'unsure',
      'thread_change_m',
      'release',
    ],
  ],
  draw: [
    ['step: draw, draw_length: 29.25 in, match: 29 in'],
    ['difference_m', 'band', 'speed_change_mps', 'power_stroke_m', 'marks'],
  ],
  paper: [
    [
      'step: paper, distance: 4 ft, nock_right: -0.4 in, nock_high: 0 in',
      'step: paper, distance: 12 ft, nock_right: -0.5 in, nock_high: -0.1 in',
    ],
    ['tears', 'launch', 'if_angle_rad', 'if_rate_radps', 'move', 'null', 'bend_spacing_m'],
  ],
  start: [
    ['step: start, far: 50 yd, centred_at: 3 yd'],
    ['far_m', 'near_m', 'centred_at_m', 'far_for_centred_m', 'far_height_m', 'far_height_sd_m', 'parts'],
  ],
  torque: [
    TORQUE,
    [
      'verdict',
      'grip_to_peep_m',
      'arrow_sd_per_m',
      'settings',
      'null',
      'torque_rad',
      'launch_share',
      'move_m',
      'now',
      'marks',
    ],
  ],
  arrows: [
    [
      'step: arrows, range: 50 yd, set: 2, measured: [{ mass: 449 gr, runout: 0.002 in }, { mass: 450 gr }, { mass: 452 gr }]',
    ],
    ['sets', 'left_over', 'all_height_sd_m', 'group_growth'],
  ],
  bare: [[BARE(0, 5)], ['tape', 'offsets', 'launch', 'move', 'null']],
  line: [
    [LINE(-1.6, 1.9, -4, -2.7), LINE(0, 1, -1, 0.5), LINE(1.6, 3, -3, 1)],
    [
      'line',
      'groups',
      'pooled_sd_m',
      'gain',
      'chance_alone',
      'looks',
      'best_position_m',
      'interval_m',
      'open_below',
      'open_above',
      'doubling_m',
      'now',
      'tightest_position_m',
      'shoot_next_m',
      'verdict',
    ],
  ],
  level: [
    [
      'step: level, range: 40 yd, slope: 30 deg, uphill: [1 in, 2 in], downhill: [0 in, -1 in]',
      'step: level, plumb_run: 2 in, plumb_aside: 0.02 in',
    ],
    ['third_axis', 'second_axis'],
  ],
};
const COMMON = ['title', 'step', 'state', 'done', 'verdict', 'reason', 'entries', 'cautions'];

describe('tune, step by step', () => {
  it.each(Object.entries(STEPS))(
    '%s: the keys of the contract, a first line and a caution',
    async (step, [entries, keys]) => {
      const report = await tune(entries, step);
      expect(Object.keys(report.data)).toEqual(expect.arrayContaining([...COMMON, ...keys]));
      expect(firstLine(report)).toMatch(/^[A-Z].*\.$/s);
      expect(report.blocks.some(({ kind }) => kind === 'caution')).toBe(true);
      expect(report.data).toMatchObject({ step, entries: entries.length });
    },
  );
  it('torque: the worked case of an independent program', async () => {
    const { data } = await tune(TORQUE, 'torque');
    expect(data).toMatchObject({
      verdict: 'move',
      null: { extension_m: expect.closeTo(5.413 * INCH, 5), method: 'two or more extensions' },
      move_m: expect.closeTo(0.913 * INCH, 5),
      torque_rad: expect.closeTo(0.1116, 4),
    });
  });
  it('torque: every travel goes as peep to pin, here 33 to 32 in', async () => {
    const first =
      'step: torque, range: 50 yd, extension: 5.75 in, left: [3.1 in, 3 in], right: [-3.1 in, -2.9 in]';
    const { data } = await tune([first], 'torque');
    const { marks } = data as {
      marks: readonly {
        travel_before_m: number;
        travel_after_m: number;
        old_tape_miss_m: number;
        range_m: number;
      }[];
    };
    for (const mark of marks.slice(1))
      expect(mark.travel_after_m / mark.travel_before_m).toBeCloseTo(32 / 33, 9);
    const far = marks.find(({ range_m: range }) => Math.abs(range - 54.864) < 1e-6);
    // an independent program: 1.5 in high at 60 yd
    expect(Math.abs((far?.old_tape_miss_m ?? 0) / INCH - 1.5)).toBeLessThan(0.06 /* in, the printed digit */);
  });
  it('the first lines say what to do', async () => {
    expect(firstLine(await tune(TORQUE, 'torque'))).toBe(
      'Set the sight 5.41 in ahead of the grip (± 0.17 in, 19 times in 20 between 5.02 and 5.81 in): 0.91 in farther ' +
        'than now.',
    );
    expect(firstLine(await tune(['step: start, far: 50 yd'], 'start'))).toMatch(
      /^Centre at 3\.97 yd; the first arrow at 50 yd is then within 7 in \(2 sd\)\.$/,
    );
    expect(firstLine(await tune([BARE(0, 5)], 'bare'))).toMatch(
      /^Bare shafts 5\.0 ± 0\.7 in right at 30 yd.*Move the rest 1\/32 in .*left/,
    );
    expect(firstLine(await tune(['step: nock, serving: [0.1155 in]'], 'nock'))).toMatch(
      /^Too tight: 0\.1155 in .*thread 0\.003 in thinner/,
    );
  });
  it('bare shafts at two places of the rest give its null', async () => {
    const { data } = await tune([BARE(0, 5), BARE(-0.8, 2.5)], 'bare');
    expect(data).toMatchObject({ verdict: 'move', null: { rest_right_m: expect.closeTo(-0.0016, 4) } });
  });
  it('a tape alone', async () => {
    const { data } = await tune(
      [
        'step: bare, fletched_mass: 446 gr, fletched_balance: 17.9 in, bare_mass: 427 gr, bare_balance: 18.61 in',
      ],
      'bare',
    );
    expect(data).toMatchObject({
      tape: { mass_kg: expect.closeTo(19 * 64.79891e-6, 9) },
      offsets: [],
      null: null,
    });
  });
  it('a slip in the step is answered with the nearest', async () => {
    await expect(tune([], 'torqe')).rejects.toThrow(/"torqe" is not a step.*Write "torque"/);
  });
});

describe('tune, the evening', () => {
  it('begins with the nock when nothing is logged', async () => {
    const report = await tune([]);
    expect(firstLine(report)).toMatch(/^Next: nock\. /);
    expect(report.data).toMatchObject({ next: { step: 'nock' } });
  });
  it('goes on to what is open, and back to what a change has made stale', async () => {
    const nock = 'step: nock, serving: [0.109 in]';
    const draw = 'step: draw, draw_length: 29 in, match: 29 in';
    expect((await tune([nock, draw])).data).toMatchObject({ next: { step: 'paper' } });
    const { data } = await tune([nock, draw, 'step: start, far: 50 yd, changed: [cams]']);
    expect(data).toMatchObject({
      next: { step: 'draw' },
      steps: expect.arrayContaining([
        expect.objectContaining({ step: 'draw', state: 'stale', changed: ['cams'] }),
      ]),
    });
  });
  it('takes the word of the last round, and skips what is to be skipped', async () => {
    const told = [
      'step: nock, serving: [0.12 in], done: true',
      'step: draw, draw_length: 29 in, match: 29 in',
    ];
    const { data } = await ask('tune', setup, {
      log: { name: 'e.yaml', text: `skip: [paper]\n${log(...told).text}` },
    });
    expect(data).toMatchObject({
      next: { step: 'start' },
      steps: expect.arrayContaining([expect.objectContaining({ step: 'paper', state: 'skipped' })]),
    });
  });
  it('draws its record on one page', async () => {
    const entries = Object.values(STEPS).flatMap(([each]) => each);
    const { sheet } = await ask('tune', setup, { log: log(...entries) }, { sheetDated: new Date(0) });
    expect(sheet?.pages).toHaveLength(1);
  });
});

describe('marks that a change has made stale', () => {
  const shot = (date: string) =>
    openSetup(
      huntingSetup(
        {},
        `marks:\n  - { range: 60 yd, reading: 31.9, date: ${date} ` +
          `}\ntuning:\n  log:\n    - { date: 2026-04-18, step: start, far: 50 yd, changed: [extension] }\n`,
      ).replace(
        'peep_to_pin: 33 in',
        'peep_to_pin: 33 in, extension: 5.75 in, scale: { travel_per_unit: 1 mm, increases: down, at_zero: 12.4 }',
      ),
      'setup.yaml',
    );
  it('are named with the change and its day', async () => {
    const { data } = await ask('tune', shot('2026-04-17'), { step: 'marks' });
    expect(data).toMatchObject({ verdict: 'stale', done: false });
    expect(JSON.stringify(data)).toContain('2026-04-18');
  });
  it('and those shot after it are not', async () => {
    expect((await ask('tune', shot('2026-04-19'), { step: 'marks' })).data).toMatchObject({
      verdict: 'reached',
      done: true,
    });
  });
});
