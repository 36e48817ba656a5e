import type { SetupFile } from '../schema/schema.ts';

/** The parts of a file that say what was shot. */
export type HasShots = Pick<SetupFile, 'marks' | 'speeds' | 'drops' | 'days'>;

type Entries = { readonly [K in 'marks' | 'speeds' | 'drops']: NonNullable<SetupFile[K]> };

/**
 * Everything that was shot, on whatever day, in the order of the file: what stands under a day carries its date, so that it and
 * an entry at the top of the file that names the date are of one day.
 */
export function shotsIn({ marks = [], speeds = [], drops = [], days = [] }: HasShots): Entries {
  return {
    marks: [...marks, ...days.flatMap(({ date, marks: shot = [] }) => shot.map((each) => ({ ...each, date })))],
    speeds: [
      ...speeds,
      ...days.flatMap(({ date, speeds: shot = [] }) => shot.map((each) => ({ ...each, date }))),
    ],
    drops: [...drops, ...days.flatMap(({ date, drops: shot = [] }) => shot.map((each) => ({ ...each, date })))],
  };
}
