import type { SetupFile } from '../../setup/schema/schema.ts';
import { sameName } from './place-asked.ts';

/** Where several places and builds may be written. */
export interface ListedStandings {
  readonly place: readonly string[];
  readonly build: readonly string[];
}

export const isListed = (asked: object): asked is ListedStandings =>
  'place' in asked && Array.isArray(asked.place) && 'build' in asked && Array.isArray(asked.build);

const ALL = 'all';

/** What was asked, once for every build at every place; once at all where neither was written. */
export function eachAsked<Asked extends ListedStandings>(
  { places = [], builds = [] }: SetupFile,
  asked: Asked,
): readonly (Omit<Asked, keyof ListedStandings> & {
  readonly place: string | null;
  readonly build: string | null;
})[] {
  const built = namesOf(asked.build, builds);
  return namesOf(asked.place, places).flatMap((place) => built.map((build) => ({ ...asked, place, build })));
}

/** The names written, each once, with "all" standing for those of the file; null where none is written. */
function namesOf(
  written: readonly string[],
  entries: readonly { readonly name: string }[],
): readonly (string | null)[] {
  if (written.length === 0) return [null];
  const meansAll = (name: string) =>
    sameName(name, ALL) && !entries.some((entry) => sameName(entry.name, ALL));
  const names = written.flatMap((name) =>
    meansAll(name) && entries.length > 0 ? entries.map((entry) => entry.name) : [name],
  );
  return names.filter((name, i) => names.findIndex((other) => sameName(other, name)) === i);
}
