import * as z from 'zod/mini';
import { DEFAULT_WORDS, DEFAULTS } from './assemble/defaults.ts';
import { KEY_MEANINGS, type KeyMeaning } from './schema/key-meaning.ts';
import { inner, mayBeAbsent } from './schema/known-keys.ts';
import { setupSchema } from './schema/schema.ts';

type Schema = z.core.$ZodType;

/** A key of the setup file as a person needs to know it. */
export interface SetupKey extends KeyMeaning {
  /** `arrow.parts.vanes.angle`; positions in lists left out. */
  readonly path: string;
  readonly kind: 'section' | 'list' | 'value';
  /** Whether it must be there once its section is. */
  readonly needed: boolean;
  /** What is used without the key, as the archer would have written it; null when nothing is. */
  readonly fallback: string | null;
}

/** Every key of the setup file, in the order of the schema, without the uncertainties (`_sd`). */
export const setupKeys = (): readonly SetupKey[] => keysUnder(setupSchema, '');

/** Found at the first call: a new file asks for some fifty of them. */
let byPath: ReadonlyMap<string, SetupKey> | undefined;

/** What a key of the setup file is: a fragment of a sentence. @throws Error for a key that the schema does not have */
export function whatIs(path: string): string {
  // The first of two with one path counts: a number, before the list that may stand in its place.
  byPath ??= new Map(
    setupKeys()
      .toReversed()
      .map((key) => [key.path, key]),
  );
  const key = byPath.get(path);
  if (key === undefined) throw new Error(`the setup file has no key ${path}`);
  return key.what;
}

/** The keys of a section, or of the entries of a list, each followed by those below it. */
function keysUnder(schema: Schema, prefix: string): readonly SetupKey[] {
  const section = inner(schema);
  if (section instanceof z.ZodMiniArray) return keysUnder(section.def.element, prefix);
  if (section instanceof z.ZodMiniUnion)
    return section.def.options.flatMap((option) => keysUnder(option, prefix));
  if (!(section instanceof z.ZodMiniObject)) return [];
  return Object.entries<Schema>(section.def.shape)
    .filter(([name]) => !name.endsWith('_sd'))
    .flatMap(([name, child]) => {
      const key = keyOf(prefix === '' ? name : `${prefix}.${name}`, child);
      return key.keysOf === undefined ? [key, ...keysUnder(child, key.path)] : [key];
    });
}

function keyOf(path: string, schema: Schema): SetupKey {
  const child = inner(schema);
  const meaning = KEY_MEANINGS.get(child);
  if (meaning === undefined) throw new Error(`the schema does not say what ${path} is`);
  const needed = !mayBeAbsent(schema);
  const fallback = needed ? null : (meaning.otherwise ?? FALLBACKS.get(path) ?? null);
  return { ...meaning, path, kind: kindOf(child), needed, fallback };
}

function kindOf(schema: Schema): SetupKey['kind'] {
  if (schema instanceof z.ZodMiniObject) return 'section';
  return schema instanceof z.ZodMiniArray ? 'list' : 'value';
}

const FALLBACKS = new Map<string, string>([
  ...Object.entries(DEFAULTS).map(([path, { text }]) => [path, text] as const),
  ...Object.entries(DEFAULT_WORDS),
]);
