/** The steps of tuning a bow, in the order in which an evening does them. */
export const TUNING_STEPS = [
  'nock',
  'draw',
  'paper',
  'start',
  'torque',
  'arrows',
  'bare',
  'line',
  'level',
] as const;
export type TuningStep = (typeof TUNING_STEPS)[number];

/** What may be altered on a bow so that earlier shots say no more how it shoots. */
export const TUNING_CHANGES = [
  'nock',
  'draw_length',
  'cams',
  'rest',
  'rest_forward',
  'extension',
  'arrow',
  'level',
] as const;
export type TuningChange = (typeof TUNING_CHANGES)[number];
