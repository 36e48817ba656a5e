import * as z from 'zod/mini';
import { once } from '../../numerics/once.ts';
import { airSchema, windSchema } from './air-schema.ts';
import { KEY_MEANINGS } from './key-meaning.ts';
import { freeText } from './leaf.ts';
import { optional } from './section.ts';
import { dropsSchema, marksSchema, speedsSchema } from './shooting-schema.ts';

/** A day of shooting, made when a file has any: what was shot, and the air, the wind and the arrow it was shot in and with. */
const day = once(() =>
  z.strictObject({
    date: freeText({ what: 'day or evening, or any name for it; marks with this `date` belong to it' }),
    air: z.exactOptional(
      z.clone(airSchema).register(KEY_MEANINGS, {
        keysOf: 'air',
        what: 'the air of that day; it takes the place of the whole of the `air` above',
        otherwise: 'the `air` above',
      }),
    ),
    wind: z.exactOptional(
      z.clone(windSchema).register(KEY_MEANINGS, {
        keysOf: 'wind',
        what: 'the wind of that day',
        otherwise: 'the `wind` above',
      }),
    ),
    build: z.exactOptional(
      freeText({
        what: 'name of the entry of `builds` whose arrows were shot',
        otherwise: 'the arrow above',
      }),
    ),
    ...optional('days', ['temperature', 'cant', 'speed', 'measured_at']),
    marks: z.exactOptional(
      z.clone(marksSchema).register(KEY_MEANINGS, { keysOf: 'marks', what: 'groups of that day' }),
    ),
    speeds: z.exactOptional(
      z.clone(speedsSchema).register(KEY_MEANINGS, {
        keysOf: 'speeds',
        what: 'readings of a chronograph down range of that day',
      }),
    ),
    drops: z.exactOptional(
      z.clone(dropsSchema).register(KEY_MEANINGS, {
        keysOf: 'drops',
        what: 'arrows of that day shot farther than the mark that was set',
      }),
    ),
  }),
);

export const daysSchema = z.array(z.lazy(day)).register(KEY_MEANINGS, {
  what: 'days of shooting, each with its own air, wind and arrow; all are fitted together',
});
