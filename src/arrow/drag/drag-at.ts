import type { Air } from '../../atmosphere/air.ts';
import { reynoldsNumber } from '../../atmosphere/reynolds-number.ts';
import type { FlyingArrow } from '../flying-arrow.ts';

/**
 * An arrow's drag coefficient at a speed through air, on the shaft's cross-section, with the factor that calibration found.
 *
 * @param speed m/s
 */
export const dragAt = (
  { drag, dragScale, diameter }: Pick<FlyingArrow, 'drag' | 'dragScale' | 'diameter'>,
  air: Air,
  speed: number,
): number => drag.at(reynoldsNumber(air, speed, diameter)) * dragScale;
