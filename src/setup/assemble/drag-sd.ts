import type { ArrowSection } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';
import { statedSd } from './stated-sd.ts';

/**
 * Standard uncertainty of an arrow's drag over the drag itself: of one coefficient when it came with an uncertainty, else of the
 * build-up from parts.
 */
export function dragSd(arrow: ArrowSection): number {
  const { drag_coefficient: value } = arrow;
  const sd = statedSd.dragCoefficient(arrow);
  return typeof value === 'number' && sd !== undefined ? sd / value : defaultOf('arrow.drag_relative_sd');
}
