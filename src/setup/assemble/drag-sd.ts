import type { ArrowSection } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';

/** Relative standard uncertainty of the drag: of one coefficient when it came with an uncertainty, else of the build-up. */
export const dragSd = ({ drag_coefficient: value, drag_coefficient_sd: sd }: ArrowSection): number =>
  typeof value === 'number' && sd !== undefined ? sd / value : defaultOf('arrow.drag_relative_sd');
