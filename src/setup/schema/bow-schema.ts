import * as z from 'zod/mini';
import { choice, leaf, type Outcome } from './leaf.ts';
import type { QuantityAt } from './limits.ts';
import { orWord, readQuantity, uncertaintyAt } from './quantity-leaf.ts';
import { optional, required } from './section.ts';

/** What the maker shot to rate the bow. */
const rating = z.strictObject({
  ...required('bow.rating', ['speed']),
  ...optional('bow.rating', ['draw_weight', 'draw_length', 'arrow_mass']),
});

/** Another arrow from the same bow. */
const chronographed = z.strictObject(required('bow.chronographed', ['arrow_mass', 'speed']));

export const bowSchema = z.strictObject({
  ...required('bow', ['peep_height']),
  ...optional('bow', ['draw_length', 'brace_height', 'peak_draw_weight', 'cant', 'virtual_mass']),
  rating: z.exactOptional(rating),
  chronographed: z.exactOptional(z.array(chronographed)),
  hand: z.exactOptional(choice(['right', 'left'])),
});

type Speed = QuantityAt<'launch.speed'> | 'rated';

const speed = leaf<Speed>(
  () => ({ allowed: 'a speed, or rated', write: '"281 fps"' }),
  (text): Outcome<Speed> =>
    text.trim() === 'rated' ? { value: 'rated' } : orWord('rated', readQuantity('launch.speed', text), text),
);

export const launchSchema = z.strictObject({
  speed,
  speed_sd: z.exactOptional(uncertaintyAt('launch.speed')),
  ...optional('launch', ['measured_at']),
});

/** A build names only what differs. */
export const buildLaunchSchema = z.partial(launchSchema);
