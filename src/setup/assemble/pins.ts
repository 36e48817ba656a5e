import type { Metres } from '../../quantities/quantity.ts';

interface Pins {
  readonly pins?: readonly Metres[] | undefined;
}

/** The ranges that fixed pins are set for, highest pin first; null when there are none or they ride on a slider. */
export const fixedPins = ({ pins }: Pins): readonly Metres[] | null =>
  pins === undefined || pins[0] === 0 ? null : pins;

/** How far the pins of a slider stand below the top one, itself first; null when there are none or they are fixed. */
export const sliderPins = ({ pins }: Pins): readonly Metres[] | null =>
  pins === undefined || pins[0] !== 0 ? null : pins;
