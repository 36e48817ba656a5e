import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import type { LimitKey } from './limits.ts';
import { meaningAt, quantityAt } from './quantity-leaf.ts';

/**
 * The schema of a list of quantities, `[0.4 in, -1.1 in]`: at least one, each with its own unit, each within the limits of the
 * key. A fault of one of them is reported at its own place in the list.
 */
export const quantitiesAt = <K extends LimitKey>(key: K) =>
  z.array(quantityAt(key)).check(z.minLength(1)).register(KEY_MEANINGS, meaningAt(key));
