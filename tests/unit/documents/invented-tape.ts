import type {
  Branch,
  StripForm,
  TapeContent,
  TapeSource,
  TapeTick,
} from '../../../src/documents/tape/tape-content.ts';
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

/** A right-handed archer's, with a needle that moves down. */
export const inventedForm: StripForm = {
  width: 12,
  length: null,
  ticks: 'left',
  farAt: 'bottom',
  numbers: 'upright',
};

/** A tape's source with its neighbours' words, in a unit of length. */
function inventedSource(
  [from, to]: readonly [number, number],
  setup: InventedSetup,
  step: number,
  change: number,
): TapeSource {
  const name = change === 0 ? '281 ft/s' : `${change > 0 ? '+' : '−'}${Math.abs(change)} ft/s`;
  const hint = `far shots ${change > 0 ? 'high' : 'low'}: try this`;
  const own = ['Invented camp, 452 grain build', '452 gr', '1250 ft air', '2026-11-25'];
  return {
    name,
    caption: change === 0 ? 'Tape' : hint,
    along: change === 0 ? own : [`${name}: ${hint}`, ...own],
    ticks: inventedTicks(from, to, { ...setup, speed: setup.speed + change * FOOT }, step),
    zeroAt: si(0),
    shot: change === 0 ? [20, 40, 60].map((label) => placeAt(label, setup, step)) : [],
    provenTo: si(80 * YARD),
  };
}

/** A whole tape that exercises everything: shot marks, near branch, nearby speeds, unproven ranges, cautions. */
export function inventedTape(
  from = 10,
  to = 100,
  setup = inventedSetup,
  { form = inventedForm, unit = 'yd' }: Partial<Pick<TapeContent, 'form' | 'unit'>> = {},
): TapeContent {
  const step = unit === 'yd' ? YARD : 1;
  const source = (change: number) => inventedSource([from, to], setup, step, change);
  return {
    title: 'Invented camp, 452 grain build',
    subtitle: ['452 gr at 281 ft/s', '59 °F, 29.92 inHg, 50 % humidity', '25 November 2026'],
    unit,
    form,
    zero: { range: si(20 * step), branch: 'far', shot: true },
    mains: [source(0)],
    before: [source(-4)],
    after: [source(4)],
    nearby: 'Nearby speeds: for long shots that land low or high.',
    unproven: 'hollow: nothing was shot near there',
    warnings: ['Check the tape at three ranges before relying on it, with a backstop behind each.'],
  };
}
