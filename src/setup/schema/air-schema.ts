import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import { optional, required } from './section.ts';

export const airSchema = z
  .strictObject(optional('air', ['temperature', 'pressure', 'sea_level_pressure', 'humidity', 'altitude']))
  .register(KEY_MEANINGS, { what: 'the air on the spot', otherwise: 'the standard atmosphere at sea level' });

export const windSchema = z
  .strictObject({
    ...required('wind', ['speed']),
    ...optional('wind', ['from', 'up', 'shear', 'measured_height']),
  })
  .register(KEY_MEANINGS, { what: 'the wind', otherwise: 'calm' });

/** Where and how the shots are taken: keys at the top of the file. */
export const placeKeys = optional('', ['latitude', 'azimuth', 'slope', 'eye_height']);
