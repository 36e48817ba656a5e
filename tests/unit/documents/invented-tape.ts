import type { Branch, TapeContent, TapeTick } from '../../../src/documents/tape/tape-content.ts';
import { type Metres, si } from '../../../src/quantities/quantity.ts';

const YARD = 0.9144;
const FOOT = 0.3048;

export interface InventedSetup {
  /** Launch speed, m/s. */
  readonly speed: number;
  /** Eye above the arrow, m. */
  readonly peepHeight: number;
  /** Peep to pin times the tape's ratio, m. */
  readonly reach: number;
}

export const inventedSetup: InventedSetup = { speed: 85.6, peepHeight: 0.117, reach: 0.84 };

/**
 * A mark by the flat-fire parabola, m: reach (h / R + g R / (2 v^2)), which turns back at R = v sqrt(2 h / g), about 14 yd.
 */
export function inventedMark(range: number, { speed, peepHeight, reach }: InventedSetup): number {
  return reach * (peepHeight / range + (9.80665 * range) / (2 * speed ** 2));
}

export function inventedTicks(
  from: number,
  to: number,
  setup = inventedSetup,
  step = YARD,
): readonly TapeTick[] {
  return Array.from({ length: to - from + 1 }, (_, i) => placeAt(from + i, setup, step));
}

function placeAt(label: number, setup: InventedSetup, step = YARD): TapeTick {
  const range = label * step;
  const turn = setup.speed * Math.sqrt((2 * setup.peepHeight) / 9.80665);
  const branch: Branch = range < turn ? 'near' : 'far';
  const along: Metres = si(inventedMark(range, setup) - inventedMark(20 * step, setup));
  return { range: si(range), label, along, branch };
}

/** A whole tape of yards that exercises everything: shot marks, near branch, nearby speeds, cautions. */
export function inventedTape(from = 10, to = 100, setup = inventedSetup): TapeContent {
  return {
    title: 'Invented camp, 452 grain build',
    subtitle: ['452 gr at 281 ft/s', '59 °F, 29.92 inHg, 50 % humidity', '25 November 2026'],
    name: '281 ft/s',
    unit: 'yd',
    increases: 'down',
    ticks: inventedTicks(from, to, setup),
    calibration: [20, 40, 60].map((label) => placeAt(label, setup)),
    zero: { range: si(20 * YARD), branch: 'far' },
    neighbours: [-4, 4].map((change) => ({
      name: `${change > 0 ? '+' : '−'}${Math.abs(change)} ft/s`,
      ticks: inventedTicks(from, to, { ...setup, speed: setup.speed + change * FOOT }),
    })),
    warnings: ['Check the tape at three ranges before relying on it, with a backstop behind each.'],
  };
}
