import type { Variation } from '../advice/scatter-causes.ts';
import type { Metres } from '../quantities/quantity.ts';
import { si } from '../quantities/quantity.ts';
import { optionQuantity } from './option-quantity.ts';

/** What a sorted dozen and a steady bow vary in, as typed on the command line. The nock's is a speed across. */
export type VariationTexts = Readonly<Record<keyof Variation, string>>;

/** The variation that the texts of options stand for. @throws CommandLineError naming the option */
export const variationFrom = (texts: VariationTexts, balance: Metres): Variation => ({
  mass: optionQuantity('--mass', texts.mass, 'mass'),
  balance: optionQuantity('--balance', texts.balance, 'length'),
  speed: optionQuantity('--speed', texts.speed, 'speed'),
  bend: optionQuantity('--bend', texts.bend, 'length'),
  vane: optionQuantity('--vane', texts.vane, 'angle'),
  head: optionQuantity('--head', texts.head, 'angle'),
  nockTravel: si(optionQuantity('--nock-travel', texts.nockTravel, 'speed') / balance),
});
