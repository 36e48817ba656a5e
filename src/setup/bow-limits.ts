import type { Limit } from './limit.ts';

export const BOW_LIMITS = {
  'bow.draw_length': { unit: 'in', min: 10, max: 36, example: 29, why: 'no archer draws shorter or longer' },
  'bow.brace_height': { unit: 'in', min: 3, max: 12, example: 6.5, why: 'no bow is strung outside it' },
  'bow.peak_draw_weight': {
    unit: 'lbf',
    min: 5,
    max: 150,
    example: 68,
    why: 'no bow drawn by hand is outside it',
  },
  'bow.peep_height': {
    unit: 'in',
    min: 1,
    max: 10,
    example: 4.6,
    why: 'the eye is above the arrow, by about the height from jaw to eye',
  },
  'bow.cant': { unit: 'deg', min: -45, max: 45, example: 0, why: 'nobody aims a compound bow lying flat' },
  'launch.speed': {
    unit: 'fps',
    min: 60,
    max: 500,
    example: 281,
    why: 'no bow drawn by hand shoots outside it',
  },
  'launch.measured_at': {
    unit: 'ft',
    min: 0,
    max: 150,
    example: 3,
    why: 'the chronograph stands ahead of the grip; a far one belongs under speeds',
  },
} as const satisfies Record<string, Limit>;
