import type { Air } from '../../atmosphere/air.ts';
import { pressureAltitude } from '../../atmosphere/standard.ts';
import { freeFallAt } from '../../flight/free-fall.ts';
import { STANDARD_GRAVITY } from '../../quantities/exact.ts';
import type { SetupFile } from '../schema/schema.ts';

/**
 * Of the place where its latitude is known. A station's pressure tells the altitude to some 100 m, a few millionths of
 * gravity; where there is none, the file's altitude serves.
 */
export function freeFallOf(
  { latitude, air: section }: Pick<SetupFile, 'latitude' | 'air'>,
  { pressure }: Air,
): number {
  if (latitude === undefined) return STANDARD_GRAVITY;
  const altitude = section?.pressure === undefined ? section?.altitude : undefined;
  return freeFallAt(latitude, altitude ?? pressureAltitude(pressure));
}
