import type { Limit } from './limit.ts';

export const SIGHT_LIMITS = {
  'sight.peep_to_pin': { unit: 'in', min: 10, max: 60, example: 33, why: 'it is drawn string to sight bar' },
  'sight.zero_range': {
    unit: 'yd',
    min: 1,
    max: 150,
    example: 20,
    why: 'a sight is zeroed where it is shot',
  },
  'sight.zero_slope': {
    unit: 'deg',
    min: -80,
    max: 80,
    example: 0,
    why: 'nobody zeroes straight up or down',
  },
  'sight.housing_below_pin': { unit: 'in', min: 0, max: 6, example: 0.8, why: 'no housing is larger' },
  'sight.lean': { unit: 'deg', min: -20, max: 20, example: 0, why: 'no second axis turns further' },
  'sight.bar_angle': {
    unit: 'deg',
    min: -30,
    max: 30,
    example: 0,
    why: 'no sight is bolted on further from square',
  },
  'sight.level_length': { unit: 'in', min: 0.2, max: 6, example: 1, why: 'it is the level in the sight' },
  'sight.travel_length': {
    unit: 'in',
    min: 0.3,
    max: 12,
    example: 3,
    why: 'it is the bar the pin travels on',
  },
  'sight.scale.travel_per_unit': {
    unit: 'mm',
    min: 0.001,
    max: 100,
    example: 1,
    why: 'it is how far one unit of the scale moves the pin',
  },
  'sight.scale.at_zero': { unit: '1', min: -1e4, max: 1e4, example: 12.4, why: 'no sight counts further' },
  'sight.tape.travel_ratio': {
    unit: '1',
    min: 0.05,
    max: 20,
    example: 1,
    why: 'it is the travel of the tape over the travel of the pin',
  },
} as const satisfies Record<string, Limit>;

export const SHOOTING_LIMITS = {
  'marks.range': { unit: 'yd', min: 1, max: 300, example: 20, why: 'nobody shoots marks nearer or further' },
  'marks.reading': { unit: '1', min: -1e4, max: 1e4, example: 12.4, why: 'no sight counts further' },
  'marks.arrows': { unit: '1', min: 1, max: 1000, example: 6, why: 'it is how many were shot', whole: true },
  'marks.group': {
    unit: 'in',
    min: 0.05,
    max: 120,
    example: 3,
    why: 'a group has a size that a target can hold',
  },
  'marks.lateral': { unit: 'in', min: -120, max: 120, example: 0, why: 'further off was not this mark' },
  'marks.vertical': { unit: 'in', min: -120, max: 120, example: 0, why: 'further off was not this mark' },
  'marks.cant': { unit: 'deg', min: -180, max: 180, example: 0, why: 'it is how the bow was held' },
  'speeds.range': { unit: 'yd', min: 0.5, max: 300, example: 40, why: 'it is where the chronograph stood' },
  'speeds.speed': {
    unit: 'fps',
    min: 50,
    max: 500,
    example: 268,
    why: 'no arrow from a bow flies outside it',
  },
  'drops.aimed_with': { unit: 'yd', min: 1, max: 300, example: 20, why: 'it is the mark that was set' },
  'drops.range': { unit: 'yd', min: 1, max: 300, example: 40, why: 'it is where the target stood' },
  'drops.drop': { unit: 'in', min: -600, max: 600, example: 20, why: 'no target is taller' },
} as const satisfies Record<string, Limit>;
