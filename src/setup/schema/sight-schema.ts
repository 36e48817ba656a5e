import * as z from 'zod/mini';
import { choice, leaf, type Outcome } from './leaf.ts';
import type { QuantityAt } from './limits.ts';
import { orWord, readQuantity, uncertaintyAt } from './quantity-leaf.ts';
import { optional, required } from './section.ts';

type TravelPerUnit = QuantityAt<'sight.scale.travel_per_unit'> | 'unknown';

const travelPerUnit = leaf<TravelPerUnit>(
  () => ({ allowed: 'a length, or unknown', write: '"1 mm", or "unknown" when marks are to measure it' }),
  (text): Outcome<TravelPerUnit> =>
    text.trim() === 'unknown'
      ? { value: 'unknown' }
      : orWord('unknown', readQuantity('sight.scale.travel_per_unit', text), text),
);

const scale = z.strictObject({
  travel_per_unit: travelPerUnit,
  travel_per_unit_sd: z.exactOptional(uncertaintyAt('sight.scale.travel_per_unit')),
  increases: z.exactOptional(choice(['down', 'up'])),
  ...optional('sight.scale', ['at_zero']),
});

export const sightSchema = z.strictObject({
  ...required('sight', ['peep_to_pin']),
  ...optional('sight', [
    'zero_range',
    'zero_slope',
    'housing_below_pin',
    'lean',
    'bar_angle',
    'level_length',
    'travel_length',
  ]),
  scale: z.exactOptional(scale),
  tape: z.exactOptional(z.strictObject(optional('sight.tape', ['travel_ratio']))),
});
