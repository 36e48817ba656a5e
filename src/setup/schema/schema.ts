import * as z from 'zod/mini';
import { once } from '../../numerics/once.ts';
import { airSchema, placeKeys, placesSchema, windSchema } from './air-schema.ts';
import { arrowSchema, buildArrowSchema } from './arrow-schema.ts';
import { bowSchema, buildLaunchSchema, launchSchema } from './bow-schema.ts';
import { daysSchema } from './day-schema.ts';
import { KEY_MEANINGS } from './key-meaning.ts';
import { flag, freeText } from './leaf.ts';
import { dropsSchema, marksSchema, speedsSchema } from './shooting-schema.ts';
import { sightSchema } from './sight-schema.ts';
import { tuningSchema } from './tuning-schema.ts';

/** Made when a file has any. */
const build = once(() =>
  z.strictObject({
    name: freeText({ what: 'name of the build' }),
    shoots_well: z.exactOptional(flag({ what: 'whether this build is known to shoot well from this bow' })),
    arrow: z.exactOptional(buildArrowSchema()),
    launch: z.exactOptional(buildLaunchSchema()),
  }),
);

const buildsSchema = z
  .array(z.lazy(build))
  .register(KEY_MEANINGS, { what: 'other arrows for this bow, to compare with the one above' });

export const setupSchema = z.strictObject({
  title: z.exactOptional(
    freeText({ what: 'a name for the head of every report', otherwise: 'the name of the file' }),
  ),
  bow: bowSchema,
  arrow: arrowSchema,
  launch: launchSchema,
  air: z.exactOptional(airSchema),
  wind: z.exactOptional(windSchema),
  places: z.exactOptional(placesSchema),
  ...placeKeys,
  sight: sightSchema,
  marks: z.exactOptional(marksSchema),
  speeds: z.exactOptional(speedsSchema),
  drops: z.exactOptional(dropsSchema),
  days: z.exactOptional(daysSchema),
  builds: z.exactOptional(buildsSchema),
  tuning: z.exactOptional(tuningSchema),
});

/** Plain data that nobody may change. */
type Fixed<T> = T extends number | string | boolean | undefined
  ? T
  : { readonly [K in keyof T]: Fixed<T[K]> };

/** What the schema makes of a file. In the package this type is written out, so that nobody needs the schema's library for it. */
type ReadFile = Fixed<z.output<typeof setupSchema>>;

/** The archer's file as written, every quantity in SI and branded; a key that is not in the file is not here. */
export type SetupFile = ReadFile & {
  /** One of the last digit that the marks' readings are written to, which numbers no longer show; absent without readings. */
  readonly readingStep?: number;
  /** What was not typed as the program writes it, and what it was taken for; absent when there is nothing of the kind. */
  readonly readAs?: readonly { readonly path: string; readonly found: string; readonly readAs: string }[];
};

export type BowSection = SetupFile['bow'];
export type ArrowSection = SetupFile['arrow'];
export type PartsSection = NonNullable<ArrowSection['parts']>;
export type AirSection = NonNullable<SetupFile['air']>;
export type PlaceEntry = NonNullable<SetupFile['places']>[number];
export type WindSection = NonNullable<SetupFile['wind']>;
type SightSection = SetupFile['sight'];
export type ScaleSection = NonNullable<SightSection['scale']>;
export type MarkEntry = NonNullable<SetupFile['marks']>[number];
export type DayEntry = NonNullable<SetupFile['days']>[number];
export type TuningSection = NonNullable<SetupFile['tuning']>;
export type TuningEntry = NonNullable<TuningSection['log']>[number];
export type BuildEntry = NonNullable<SetupFile['builds']>[number];
