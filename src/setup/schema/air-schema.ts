import * as z from 'zod/mini';
import { optional, required } from './section.ts';

export const airSchema = z.strictObject(
  optional('air', ['temperature', 'pressure', 'sea_level_pressure', 'humidity', 'altitude']),
);

export const windSchema = z.strictObject({
  ...required('wind', ['speed']),
  ...optional('wind', ['from', 'up', 'shear', 'measured_height']),
});

/** Where and how the shots are taken: keys at the top of the file. */
export const placeKeys = optional('', ['latitude', 'azimuth', 'slope', 'eye_height']);
