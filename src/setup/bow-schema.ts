import * as z from 'zod/mini';
import { choice } from './leaf.ts';
import { optional, required } from './section.ts';

export const bowSchema = z.strictObject({
  ...required('bow', ['peep_height']),
  ...optional('bow', ['draw_length', 'brace_height', 'peak_draw_weight', 'cant']),
  hand: z.exactOptional(choice(['right', 'left'])),
});

export const launchSchema = z.strictObject({
  ...required('launch', ['speed']),
  ...optional('launch', ['measured_at']),
});

/** A build names only what differs. */
export const buildLaunchSchema = z.partial(launchSchema);
