import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import { choice, type LeafOutcome, leaf } from './leaf.ts';
import type { QuantityAt } from './limits.ts';
import { meaningAt, orWord, readQuantity, uncertaintyAt } from './quantity-leaf.ts';
import { optional, required } from './section.ts';

/** What the maker shot to rate the bow. */
const rating = z
  .strictObject({
    ...required('bow.rating', ['speed']),
    ...optional('bow.rating', ['draw_weight', 'draw_length', 'arrow_mass']),
  })
  .register(KEY_MEANINGS, {
    what: 'what the maker shot to rate the bow, for `launch.speed: rated` and for the speeds of other arrows',
  });

/** Another arrow from the same bow. */
const chronographed = z
  .array(z.strictObject(required('bow.chronographed', ['arrow_mass', 'speed'])))
  .register(KEY_MEANINGS, { what: 'other arrows chronographed from this bow' });

export const bowSchema = z
  .strictObject({
    ...required('bow', ['peep_height']),
    ...optional('bow', ['draw_length', 'brace_height', 'peak_draw_weight', 'cant', 'virtual_mass']),
    rating: z.exactOptional(rating),
    chronographed: z.exactOptional(chronographed),
    hand: z.exactOptional(
      choice(
        ['right', 'left'],
        { what: 'the hand that draws' },
        {
          right: ['r', 'rh', 'right hand', 'right handed', 'righthanded', 'righty'],
          left: ['l', 'lh', 'left hand', 'left handed', 'lefthanded', 'lefty'],
        },
      ),
    ),
  })
  .register(KEY_MEANINGS, { what: 'the bow' });

type Speed = QuantityAt<'launch.speed'> | 'rated' | 'unknown';

const speed = leaf<Speed>(
  () => ({ allowed: 'a speed, or rated, or unknown', write: '"281 fps"' }),
  (text): LeafOutcome<Speed> => {
    const word = text.trim().toLowerCase();
    if (word === 'rated' || word === 'unknown') return { value: word };
    return orWord('unknown', orWord('rated', readQuantity('launch.speed', text), text), text);
  },
).register(KEY_MEANINGS, meaningAt('launch.speed'));

export const launchSchema = z
  .strictObject({
    speed,
    speed_sd: z.exactOptional(uncertaintyAt('launch.speed')),
    ...optional('launch', ['measured_at', 'speed_per_degree']),
  })
  .register(KEY_MEANINGS, { what: 'how fast the arrow leaves the bow' });

/** A build names only what differs. */
export const buildLaunchSchema = () =>
  z.partial(launchSchema).register(KEY_MEANINGS, {
    what: 'its launch, where you chronographed it',
    keysOf: 'launch',
    otherwise: 'worked out from the energy of the bow',
  });
