import type { OpenSetup } from '../setup/open.ts';
import type { Slider } from '../sight/tape.ts';

/** How far the slider goes, where the file says so. */
export const sliderOf = ({ setup: { sight } }: Pick<OpenSetup, 'setup'>): Slider => ({
  length: sight.travel_length ?? null,
  aboveZero: sight.travel_above_zero ?? null,
});
