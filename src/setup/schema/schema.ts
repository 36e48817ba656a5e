import * as z from 'zod/mini';
import { airSchema, placeKeys, windSchema } from './air-schema.ts';
import { arrowSchema, buildArrowSchema } from './arrow-schema.ts';
import { bowSchema, buildLaunchSchema, launchSchema } from './bow-schema.ts';
import { freeText } from './leaf.ts';
import { dropSchema, markSchema, speedSchema } from './shooting-schema.ts';
import { sightSchema } from './sight-schema.ts';

const buildSchema = z.strictObject({
  name: freeText,
  arrow: z.exactOptional(buildArrowSchema),
  launch: z.exactOptional(buildLaunchSchema),
});

export const setupSchema = z.strictObject({
  title: z.exactOptional(freeText),
  bow: bowSchema,
  arrow: arrowSchema,
  launch: launchSchema,
  air: z.exactOptional(airSchema),
  wind: z.exactOptional(windSchema),
  ...placeKeys,
  sight: sightSchema,
  marks: z.exactOptional(z.array(markSchema)),
  speeds: z.exactOptional(z.array(speedSchema)),
  drops: z.exactOptional(z.array(dropSchema)),
  builds: z.exactOptional(z.array(buildSchema)),
});

/** Plain data that nobody may change. */
type Fixed<T> = T extends number | string | boolean | undefined
  ? T
  : { readonly [K in keyof T]: Fixed<T[K]> };

/** The archer's file as written, every quantity in SI and branded; a key that is not in the file is not here. */
export type SetupFile = Fixed<z.output<typeof setupSchema>>;

export type BowSection = SetupFile['bow'];
export type ArrowSection = SetupFile['arrow'];
export type PartsSection = NonNullable<ArrowSection['parts']>;
export type AirSection = NonNullable<SetupFile['air']>;
export type WindSection = NonNullable<SetupFile['wind']>;
type SightSection = SetupFile['sight'];
export type ScaleSection = NonNullable<SightSection['scale']>;
export type MarkEntry = NonNullable<SetupFile['marks']>[number];
export type BuildEntry = NonNullable<SetupFile['builds']>[number];
