import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import { choice, type LeafOutcome, leaf } from './leaf.ts';
import type { QuantityAt } from './limits.ts';
import { meaningAt, orWord, readQuantity, uncertaintyAt } from './quantity-leaf.ts';
import { quantitiesAt } from './quantity-list.ts';
import { optional, required } from './section.ts';

type TravelPerUnit = QuantityAt<'sight.scale.travel_per_unit'> | 'unknown';

const travelPerUnit = leaf<TravelPerUnit>(
  () => ({ allowed: 'a length, or unknown', write: '"1 mm", or "unknown" when marks are to measure it' }),
  (text): LeafOutcome<TravelPerUnit> =>
    text.trim().toLowerCase() === 'unknown'
      ? { value: 'unknown' }
      : orWord('unknown', readQuantity('sight.scale.travel_per_unit', text), text),
).register(KEY_MEANINGS, meaningAt('sight.scale.travel_per_unit'));

const scale = z
  .strictObject({
    travel_per_unit: travelPerUnit,
    travel_per_unit_sd: z.exactOptional(uncertaintyAt('sight.scale.travel_per_unit')),
    increases: z.exactOptional(
      choice(['down', 'up'], {
        what: 'down when the numbers grow as the pin goes down, up when they grow as it goes up',
      }),
    ),
    ...optional('sight.scale', ['at_zero']),
  })
  .register(KEY_MEANINGS, { what: 'the numbers on the sight; without them there are no readings' });

type TravelRatio = QuantityAt<'sight.tape.travel_ratio'> | 'unknown';

const travelRatio = leaf<TravelRatio>(
  () => ({ allowed: 'a number, or unknown', write: '"1", or "unknown" when pencil lines are to measure it' }),
  (text): LeafOutcome<TravelRatio> =>
    text.trim().toLowerCase() === 'unknown'
      ? { value: 'unknown' }
      : orWord('unknown', readQuantity('sight.tape.travel_ratio', text), text),
).register(KEY_MEANINGS, meaningAt('sight.tape.travel_ratio'));

const tape = z
  .strictObject({
    travel_ratio: z.exactOptional(travelRatio),
    travel_ratio_sd: z.exactOptional(uncertaintyAt('sight.tape.travel_ratio')),
    ...optional('sight.tape', ['width', 'length']),
    ticks: z.exactOptional(
      choice(['left', 'right'], {
        what: 'edge of the tape that the needle meets',
        otherwise: 'left for a right-handed archer, right for a left-handed one',
      }),
    ),
    far_at: z.exactOptional(
      choice(['bottom', 'top'], {
        what: 'end of the tape with the long ranges: bottom where the needle moves down, top where the tape does',
        otherwise: 'bottom where `sight.scale.increases` is down, top where it is up',
      }),
    ),
    numbers: z.exactOptional(
      choice(['upright', 'sideways'], { what: 'how the numbers stand when the tape is upright' }),
    ),
  })
  .register(KEY_MEANINGS, { what: 'the tape on the sight' });

export const sightSchema = z
  .strictObject({
    ...required('sight', ['peep_to_pin']),
    ...optional('sight', [
      'extension',
      'zero_range',
      'zero_slope',
      'housing_below_pin',
      'lean',
      'bar_angle',
      'level_length',
      'travel_length',
      'travel_above_zero',
      'range_length',
    ]),
    pins: z.exactOptional(quantitiesAt('sight.pins')),
    scale: z.exactOptional(scale),
    tape: z.exactOptional(tape),
  })
  .register(KEY_MEANINGS, { what: 'the sight' });
