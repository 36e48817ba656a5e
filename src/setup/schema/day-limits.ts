import { AIR_LIMITS } from './air-limits.ts';
import { BOW_LIMITS } from './bow-limits.ts';
import type { Limit } from './limit.ts';

/** Numbers of a day of shooting that stand for those of the whole file. */
export const DAY_LIMITS = {
  'days.temperature': {
    ...AIR_LIMITS['air.temperature'],
    what: 'air temperature of that day, where the rest of `air` is as in the file',
    otherwise: 'that of the air',
  },
  'days.cant': {
    ...BOW_LIMITS['bow.cant'],
    what: 'how far the bow leaned at every shot of that day, top limb to the right positive',
    otherwise: 'as `bow.cant`',
  },
  'days.speed': {
    ...BOW_LIMITS['launch.speed'],
    what: 'mean speed of a few arrows of that day from a chronograph at the bow',
  },
  'days.measured_at': {
    ...BOW_LIMITS['launch.measured_at'],
    what: 'distance of the middle of that chronograph ahead of the grip',
  },
} as const satisfies Record<string, Limit>;
