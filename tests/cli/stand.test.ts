import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

/** An invented hunting bow at 281 ft/s whose holds were worked out by hand. */
const HUNT = `title: hunt
bow: { draw_length: 29 in, peep_height: 4.75 in }
arrow:
  diameter: 0.265 in
  mass: 454 gr
  balance: 17.875 in
  parts:
    shaft: { length: 28.5 in, mass_per_length: 9.5 gpi, inner_diameter: 0.204 in, deflection: 300 }
    insert: { mass: 50 gr }
    point: { mass: 100 gr, shape: field }
    nock: { mass: 9 gr }
    vanes: { count: 3, mass: 6.8 gr, root_chord: 2.25 in, tip_chord: 1 in, height: 0.465 in,
             from_nock: 1.125 in, angle: 2.5 deg, turn: right }
launch: { speed: 281 fps }
air: { temperature: 68 degF, sea_level_pressure: 29.95 inHg, altitude: 1250 ft, humidity: 45 % }
sight:
  peep_to_pin: 33.5 in
  zero_range: 20 yd
  scale: { travel_per_unit: 0.5 mm, at_zero: 14 }
marks:
  - { range: 20 yd, reading: 14, arrows: 3, group: 1.25 in }
  - { range: 60 yd, reading: 50.5, arrows: 4, group: 4.5 in, vertical: -1 in }
  - { range: 80 yd, reading: 72, arrows: 4, group: 6.5 in }
`;
const INCH = 0.0254;
const FOOT = 0.3048;

const ask = (...argv: readonly string[]) => atTerminal(['slope', 's.yaml', ...argv], { 's.yaml': HUNT });
const json = async (...argv: readonly string[]) => {
  const { out, err } = await ask('--json', ...argv);
  expect(err).toBe('');
  return JSON.parse(out);
};

interface Row {
  readonly range_m: number;
  readonly slope_rad: number;
  readonly hold_m: number;
}
interface StandRow extends Omit<Row, 'range_m'> {
  readonly counted_along: string;
  readonly ground_range_m: number;
  readonly line_range_m: number;
  readonly stand_height_m: number;
  readonly mark_range_m: number | null;
}

describe('a slope too steep for any mark', () => {
  it('is shot with the highest: by hand 0.36 in high at 20 yd and 30 deg down, 1.2 in at 40 deg', async () => {
    const { rows } = await json();
    for (const [degrees, inches] of [
      [-30, 0.36],
      [-40, 1.2],
    ] as const) {
      const row = rows.find(
        ({ range_m, slope_rad }: Row) =>
          Math.abs(range_m - 18.288) < 1e-6 && Math.abs(slope_rad * (180 / Math.PI) - degrees) < 1e-6,
      );
      expect(Math.abs(row.hold_m / INCH - inches)).toBeLessThan(
        0.1 /* in: by hand without drag and with a steady fall */,
      );
    }
  });

  it('has its hold in words under the table', async () => {
    const { out } = await ask();
    expect(out.replace(/\s+/g, ' ')).toContain(
      '"-" at 20 yd: set the highest; at -40° hold 1.2 in low; at -30° hold dead on, 0.4 in high;',
    );
  });
});

describe('--stand', () => {
  it('answers in the first line what to set, or to hold where no mark is high enough', async () => {
    const { out } = await ask('--stand', '20ft');
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /^From 20 ft up, 10 yd: set the highest, hold (dead on, )?[\d.]+ in (high|low); 20 yd: set 1\d\.\d yd; 30 yd: set 29\.\d/,
    );
  });

  it('counts along the ground and along the line: a right triangle under the eye, 1.6 m above the floor', async () => {
    const { stand_rows, stand_eye_height_m } = await json('--stand', '15 ft, 20', '--spot-height', '0 ft');
    expect(stand_eye_height_m).toBe(1.6);
    expect(stand_rows.length).toBeGreaterThan(20);
    for (const row of stand_rows as readonly StandRow[]) {
      const down = row.stand_height_m + 1.6;
      expect(Math.abs(Math.hypot(row.ground_range_m, down) - row.line_range_m)).toBeLessThan(1e-9 /* m */);
      expect(Math.abs(Math.tan(-row.slope_rad) - down / row.ground_range_m)).toBeLessThan(
        1e-9 /* rounding */,
      );
      const round = row.counted_along === 'ground' ? row.ground_range_m : row.line_range_m;
      expect(Math.abs(round / (5 * 0.9144) - Math.round(round / (5 * 0.9144)))).toBeLessThan(
        1e-9 /* steps */,
      );
    }
    const stands = new Set((stand_rows as readonly StandRow[]).map(({ stand_height_m }) => stand_height_m));
    expect([...stands]).toEqual([15 * FOOT, 20 * FOOT]);
  });

  it('holds exactly where there is no mark', async () => {
    const { stand_rows } = await json('--stand', '20ft');
    const rows: readonly StandRow[] = stand_rows;
    expect(new Set(rows.map(({ mark_range_m }) => mark_range_m === null))).toEqual(new Set([true, false]));
    for (const { mark_range_m, hold_m } of rows) expect(hold_m > 0).toBe(mark_range_m === null);
  });

  it('refuses a stand of no height', async () => {
    const { err } = await ask('--stand', '0 ft');
    expect(err).toContain('--stand: 0 ft must be greater than zero');
  });
});
