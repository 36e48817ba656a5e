import type { Variation } from '../../advice/scatter/scatter-causes.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { limitedQuantity } from '../asked/quantity.ts';

/** What a sorted dozen and a steady bow vary in, as typed on the command line. The nock's is a speed across. */
export type VariationTexts = Readonly<Record<keyof Variation, string>>;

/** Standard deviations beyond these are no dozen's, and at a few of them nothing is left of an arrow or its flight. */
const MOST = {
  mass: '50 gr',
  balance: '1 in',
  speed: '20 fps',
  bend: '0.1 in',
  vane: '10 deg',
  head: '5 deg',
  nockTravel: '10 fps',
} as const;

/** The variation that the texts of options stand for. @throws QuestionError naming the option */
export const variationFrom = (texts: VariationTexts, balance: Metres): Variation => ({
  mass: limitedQuantity('mass', texts.mass, 'mass', MOST.mass),
  balance: limitedQuantity('balance', texts.balance, 'length', MOST.balance),
  speed: limitedQuantity('speed', texts.speed, 'speed', MOST.speed),
  bend: limitedQuantity('bend', texts.bend, 'length', MOST.bend),
  vane: limitedQuantity('vane', texts.vane, 'angle', MOST.vane),
  head: limitedQuantity('head', texts.head, 'angle', MOST.head),
  nockTravel: si(limitedQuantity('nockTravel', texts.nockTravel, 'speed', MOST.nockTravel) / balance),
});
