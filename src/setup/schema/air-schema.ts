import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import { freeText } from './leaf.ts';
import { optional, required } from './section.ts';

export const airSchema = z
  .strictObject(optional('air', ['temperature', 'pressure', 'sea_level_pressure', 'humidity', 'altitude']))
  .register(KEY_MEANINGS, { what: 'the air on the spot', otherwise: 'the standard atmosphere at sea level' });

const place = z.strictObject({
  name: freeText({ what: 'name of the place, for `--place`' }),
  ...optional('places', ['altitude', 'temperature', 'pressure', 'sea_level_pressure', 'humidity']),
});

export const placesSchema = z.array(place).register(KEY_MEANINGS, {
  what: 'other places to get answers for with `--place`; the marks stay those of the air above',
});

export const windSchema = z
  .strictObject({
    ...required('wind', ['speed']),
    ...optional('wind', ['from', 'up', 'shear', 'measured_height']),
  })
  .register(KEY_MEANINGS, { what: 'the wind', otherwise: 'calm' });

/** Where and how the shots are taken: keys at the top of the file. */
export const placeKeys = optional('', ['latitude', 'azimuth', 'slope', 'eye_height']);
