import { type SetupKey, setupKeys } from '../../setup/keys.ts';

/** A section of the form: keys that hold one value each, or entries that all have the same keys. */
export interface KeyGroup {
  readonly path: string;
  readonly what: string;
  readonly isList: boolean;
  /** Paths from the top of the file; those of entries without the number of the entry. */
  readonly keys: readonly SetupKey[];
}

const under = (path: string, section: string): boolean => path.startsWith(`${section}.`);

/** Sections that are long enough to stand apart from what they belong to. */
const APART: readonly string[] = ['arrow.parts'];
const SINGLE = 'title';

/** What `peep_height` is called on a label; what is above it in the same section is left out. */
export const keyLabel = (path: string, section: string): string =>
  (under(path, section) ? path.slice(section.length + 1) : path).replaceAll('.', ', ').replaceAll('_', ' ');

/** The sections of the form in the order of the schema. */
export function keyGroups(): readonly KeyGroup[] {
  const all = setupKeys();
  const lists = all.filter(({ kind }) => kind === 'list').map(({ path }) => path);
  const withBorrowed = all.flatMap((key) => (key.keysOf === undefined ? [key] : borrowed(key, all)));
  const values = withBorrowed.filter(({ kind }) => kind === 'value');
  const heads = all.filter(
    ({ path, kind }) => kind !== 'value' && (!path.includes('.') || APART.includes(path)),
  );
  const groups = heads.map(({ path, what, kind }): KeyGroup => {
    const inner = lists.filter((list) => under(list, path));
    const apart = APART.filter((other) => under(other, path));
    const keys = values.filter(
      (key) => under(key.path, path) && ![...inner, ...apart].some((list) => under(key.path, list)),
    );
    return { path, what, isList: kind === 'list', keys };
  });
  const loose = values.filter(({ path }) => !path.includes('.') && path !== SINGLE);
  const title = values.filter(({ path }) => path === SINGLE);
  return [
    { path: '', what: 'the name of the setup', isList: false, keys: title },
    ...groups,
    { path: 'where and how', what: 'the place and the shot', isList: false, keys: loose },
  ].filter(({ keys }) => keys.length > 0);
}

/** The keys of another section, where a section repeats it: those of `arrow` in an entry of `builds`. */
function borrowed(key: SetupKey, all: readonly SetupKey[]): readonly SetupKey[] {
  const { path, keysOf = '' } = key;
  const inLists = all.filter(({ kind }) => kind === 'list').map((list) => list.path);
  return all
    .filter((other) => under(other.path, keysOf) && !inLists.some((list) => under(other.path, list)))
    .map((other) => ({
      ...other,
      path: path + other.path.slice(keysOf.length),
      needed: false,
      fallback: null,
    }));
}
