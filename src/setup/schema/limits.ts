import { AIR_LIMITS } from './air-limits.ts';
import { ARROW_LIMITS } from './arrow-limits.ts';
import { BOW_LIMITS } from './bow-limits.ts';
import { DAY_LIMITS } from './day-limits.ts';
import type { QuantityIn } from './limit.ts';
import { PARTS_LIMITS } from './parts-limits.ts';
import { SHOOTING_LIMITS, SIGHT_LIMITS } from './sight-limits.ts';
import { TUNING_ARROW_LIMITS } from './tuning-arrow-limits.ts';
import { TUNING_LIMITS } from './tuning-limits.ts';

/** Every number of the setup file by its key path, list positions left out. */
export const LIMITS = {
  ...BOW_LIMITS,
  ...ARROW_LIMITS,
  ...PARTS_LIMITS,
  ...AIR_LIMITS,
  ...SIGHT_LIMITS,
  ...SHOOTING_LIMITS,
  ...DAY_LIMITS,
  ...TUNING_LIMITS,
  ...TUNING_ARROW_LIMITS,
};

export type LimitKey = keyof typeof LIMITS;
/** The branded SI number that stands behind a key of the file. */
export type QuantityAt<K extends LimitKey> = QuantityIn<(typeof LIMITS)[K]['unit']>;
