import type { TuningStep } from '../../bow/tuning-steps.ts';

/** Keys that any entry of the tuning log may have. */
export const COMMON_KEYS = ['date', 'step', 'changed', 'done', 'note'] as const;

const REST = ['rest_right', 'rest_up', 'nock_up'] as const;

interface StepKeys {
  readonly needed: readonly string[];
  readonly allowed: readonly string[];
}

/** The keys that an entry must and may have besides those of every entry, by its step. */
export const STEP_KEYS: Readonly<Record<TuningStep, StepKeys>> = {
  nock: { needed: ['serving'], allowed: ['fits_at', 'held', 'dropped'] },
  draw: { needed: ['draw_length', 'match'], allowed: ['holding_weight', 'late_stop', 'stop_gap'] },
  paper: { needed: ['distance', 'nock_right', 'nock_high'], allowed: ['arrow', 'count', ...REST] },
  start: { needed: ['far'], allowed: ['centred_at'] },
  torque: { needed: ['range', 'extension', 'left', 'right'], allowed: ['turned'] },
  arrows: { needed: ['range', 'measured'], allowed: ['set'] },
  bare: {
    needed: [],
    allowed: [
      'range',
      'fletched',
      'bare',
      'fletched_mass',
      'fletched_balance',
      'bare_mass',
      'bare_balance',
      ...REST,
    ],
  },
  line: { needed: ['range', 'line'], allowed: ['off_line', 'spread', 'arrows', ...REST] },
  level: {
    needed: [],
    allowed: ['range', 'slope', 'uphill', 'downhill', 'tipped', 'cant', 'plumb_run', 'plumb_aside'],
  },
};

export const keysOfStep = (step: TuningStep): readonly string[] => [
  ...STEP_KEYS[step].needed,
  ...STEP_KEYS[step].allowed,
];
