import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const text = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
const YARD = 0.9144;
const withPins = (pins: string, more = ''): string =>
  `${text.replace('zero_range: 20 yd', `zero_range: 20 yd\n  pins: ${pins}`)}${more}`;

async function ask(command: string, file: string, ...argv: readonly string[]) {
  const { out, err } = await atTerminal([command, 's.yaml', '--json', ...argv], { 's.yaml': file });
  if (err !== '') throw new Error(err);
  return JSON.parse(out);
}

describe('fixed pins', () => {
  const file = withPins('[20 yd, 30 yd, 40 yd]');

  it('stand below the first by the travel between their marks', async () => {
    const { pins } = await ask('pins', file);
    const { rows } = await ask('marks', file, '--from', '20 yd', '--to', '40 yd', '--every', '10 yd');
    expect(pins.map(({ pin }: { pin: number }) => pin)).toEqual([1, 2, 3]);
    for (const [i, { down_m, range_m }] of pins.entries()) {
      expect(Math.abs(down_m - (rows[i].travel_m - rows[0].travel_m))).toBeLessThan(1e-7 /* m */);
      expect(Math.abs(range_m - rows[i].range_m)).toBeLessThan(2e-4 /* m */);
    }
  });

  it('hit between them where an arrow flies that is aimed with one and shot at the other range', async () => {
    const { between } = await ask('pins', file);
    for (const [pin, aim, range] of [
      [2, 30, 35],
      [3, 40, 35],
      [3, 40, 60],
    ] as const) {
      const hit = between.find(
        (each: { pin: number; range_m: number }) =>
          each.pin === pin && Math.abs(each.range_m - range * YARD) < 1e-6,
      );
      const { rows } = await ask(
        'fly',
        file,
        '--aim',
        `${aim} yd`,
        '--to',
        `${range} yd`,
        '--every',
        `${range} yd`,
      );
      expect(Math.abs(hit.height_m - rows[0].height_m)).toBeLessThan(2e-5 /* m: shared flights */);
    }
  });

  it('can be held dead on while the hit stays in the ring', async () => {
    const { pins } = await ask('pins', file, '--ring', '6 in');
    for (const [i, { dead_on }] of pins.entries()) {
      expect(dead_on.ring_m).toBeCloseTo(0.1524, 12);
      const heights = async (range: number) =>
        (await ask('fly', file, '--aim', `${20 + 10 * i} yd`, '--to', `${range} m`, '--every', `${range} m`))
          .rows[0].height_m;
      expect(Math.abs((await heights(dead_on.to_m)) + 0.0762)).toBeLessThan(1e-4 /* m */);
    }
  });

  it('are where the marks that name them say, by how far off they hit', async () => {
    // Held on 30 yd, the second pin hit 3 in low: it stands too high for 30 by 3 in times peep to pin over the range.
    const { pins } = await ask('pins', `${file}  - { range: 30 yd, pin: 2, vertical: -3 in }\n`);
    const { pins: stated } = await ask('pins', file);
    const byHand = (0.0762 * 34.5 * 0.0254) / (30 * YARD);
    expect(stated[1].down_m - pins[1].down_m).toBeGreaterThan(0);
    expect(Math.abs(stated[1].down_m - pins[1].down_m - byHand)).toBeLessThan(
      3e-5 /* m: the small angle, 1 % */,
    );
    expect([stated[1].shot, pins[1].shot, pins[0].shot]).toEqual([false, true, false]);
    expect(pins[1].range_m).toBeLessThan(30 * YARD - 1);
  });

  it('stay where they are for another arrow, and are on for another range', async () => {
    const builds = 'builds:\n  - { name: heavy, arrow: { parts: { point: { mass: 175 gr } } } }\n';
    const home = await ask('pins', `${file}${builds}`);
    const heavy = await ask('pins', `${file}${builds}`, '--build', 'heavy');
    for (const [i, { down_m, range_m }] of heavy.pins.entries()) {
      expect(Math.abs(down_m - home.pins[i].down_m)).toBeLessThan(1e-7 /* m */);
      expect(range_m).toBeLessThan(home.pins[i].range_m - 1);
    }
  });
});

describe('pins on a slider', () => {
  const file = withPins('[0 mm, 7.5 mm, 14 mm]');

  it('are on for the ranges whose marks lie that far below the mark that is set', async () => {
    const { pins, settings } = await ask('pins', file);
    expect(pins.map(({ down_m }: { down_m: number }) => Math.round(1e7 * down_m))).toEqual([
      0, 75000, 140000,
    ]);
    for (const { top_range_m, ranges_m } of settings.slice(0, 4)) {
      const travels = [];
      for (const range of [top_range_m, ranges_m[1], ranges_m[2]]) {
        const { rows } = await ask(
          'marks',
          file,
          '--from',
          `${range} m`,
          '--to',
          `${range} m`,
          '--every',
          '1 m',
        );
        travels.push(rows[0].travel_m);
      }
      const [top = 0, second = 0, third = 0] = travels;
      expect(Math.abs(second - top - 0.0075)).toBeLessThan(2e-7 /* m: a range to a tenth of a millimetre */);
      expect(Math.abs(third - top - 0.014)).toBeLessThan(2e-7 /* m */);
    }
  });
});

describe('tapes of a slider with several pins', () => {
  it('has one for each pin, on which a range stands as much higher as the pin stands lower', async () => {
    const { strips, ticks } = await ask('tape', withPins('[0 mm, 7.5 mm, 14 mm]'));
    expect(strips.map(({ pin }: { pin: number }) => pin)).toEqual([1, 2, 3]);
    const along = (i: number, label: number) =>
      strips[i].ticks.find(
        ({ range_m }: { range_m: number }) => Math.abs(range_m - label * YARD) < 1e-9 /* m */,
      ).along_m;
    expect(strips[0].ticks).toEqual(ticks);
    // The strip runs 1.5 times as far as the pin.
    expect(Math.abs(along(0, 60) - along(1, 60) - 1.5 * 0.0075)).toBeLessThan(1e-9 /* m */);
    expect(Math.abs(along(0, 60) - along(2, 60) - 1.5 * 0.014)).toBeLessThan(1e-9 /* m */);
    // With the top pin at its zero the second is on for 38.6 yd: its tape begins with the next yard.
    expect(strips[1].ticks[0].range_m).toBeCloseTo(39 * YARD, 9);
  });
});

describe('a drawing of the pins', () => {
  it('is at true size, within 0.02 mm', async () => {
    const file = withPins('[20 yd, 30 yd, 40 yd, 50 yd]');
    const { files } = await atTerminal(['pins', 's.yaml', '--out', 'p.svg'], { 's.yaml': file });
    const ys = [
      ...String(files.get('p.svg')).matchAll(/<line class="pin-line" x1="[\d.]+" y1="([\d.]+)"/g),
    ].map(([, y]) => Number(y));
    const { pins } = await ask('pins', file);
    expect(ys).toHaveLength(4);
    for (const [i, y] of ys.entries())
      expect(Math.abs(y - (ys[0] ?? Number.NaN) - 1000 * pins[i].down_m)).toBeLessThan(0.02 /* mm */);
  });
});

describe('pins that cannot be', () => {
  it.each([
    [
      'that do not go down',
      withPins('[20 yd, 40 yd, 30 yd]'),
      /sight\.pins, entry 3 is not farther than the range before it/,
    ],
    ['at a range on a slider', withPins('[0 mm, 30 yd]'), /is no distance below the top pin/],
    [
      'that a mark names and the sight lacks',
      `${withPins('[20 yd, 30 yd]')}  - { range: 30 yd, pin: 3 }\n`,
      /the sight has 2 pins/,
    ],
  ])('%s are refused by their place', async (_, file, message) => {
    const { err, code } = await atTerminal(['check', 's.yaml'], { 's.yaml': file });
    expect(code).toBe(2);
    expect(err.replaceAll(/\s+/g, ' ')).toMatch(message);
  });
});
