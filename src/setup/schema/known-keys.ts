import * as z from 'zod/mini';
import { isRecord, type KeyPath } from '../key-path.ts';

type Schema = z.core.$ZodType;

/** The schema behind "may be absent" and "made when it is needed". */
export function inner(schema: Schema): Schema {
  if (schema instanceof z.ZodMiniLazy) return inner(schema._zod.innerType);
  if (schema instanceof z.ZodMiniExactOptional || schema instanceof z.ZodMiniOptional)
    return inner(schema.def.innerType);
  return schema;
}

export const mayBeAbsent = (schema: Schema): boolean => inner(schema) !== schema;

/**
 * The keys that a section may have, or the entries of a list, in the schema's order, without the uncertainties; none for
 * anything else.
 */
export function keysAt(schema: Schema, path: KeyPath): readonly string[] {
  const section = schemaAt(schema, path);
  const found = section === undefined ? undefined : entryOf(section);
  return found instanceof z.ZodMiniObject
    ? Object.keys(found.def.shape).filter((key) => !key.endsWith('_sd'))
    : [];
}

/** Whether a list of single values belongs at the path, and not one of sections. */
export function holdsSingleValues(schema: Schema, path: KeyPath): boolean {
  const found = schemaAt(schema, path);
  return found instanceof z.ZodMiniArray && !(inner(found.def.element) instanceof z.ZodMiniObject);
}

function schemaAt(schema: Schema, path: KeyPath): Schema | undefined {
  const section = path.reduce<Schema | undefined>(
    (at, step) => (at === undefined ? undefined : childOf(at, step)),
    schema,
  );
  return section === undefined ? undefined : inner(section);
}

/** Of a list, the section of its entries. */
const entryOf = (schema: Schema): Schema =>
  schema instanceof z.ZodMiniArray ? inner(schema.def.element) : schema;

function childOf(schema: Schema, step: string | number): Schema | undefined {
  const found = typeof step === 'number' ? inner(schema) : entryOf(inner(schema));
  if (found instanceof z.ZodMiniObject) return found.def.shape[step];
  if (found instanceof z.ZodMiniArray) return found.def.element;
  if (found instanceof z.ZodMiniUnion)
    return found.def.options.find((option) => option instanceof z.ZodMiniArray);
  return undefined;
}

/**
 * The file with its empty sections settled: one that may be absent and has nothing under it (all of it commented out) is
 * left out, and one that must be there is put in empty, so that each of its missing keys is reported by name.
 */
export function withSectionsSettled(schema: Schema, value: unknown): unknown {
  const section = inner(schema);
  if (section instanceof z.ZodMiniArray && Array.isArray(value))
    return value.map((entry) => withSectionsSettled(section.def.element, entry));
  if (!(section instanceof z.ZodMiniObject) || !isRecord(value)) return value;
  const entries = new Map(Object.entries(value));
  for (const [key, child] of Object.entries<Schema>(section.def.shape)) {
    const kind = inner(child);
    if (!(kind instanceof z.ZodMiniObject || kind instanceof z.ZodMiniArray)) continue;
    const present = entries.get(key) ?? (mayBeAbsent(child) ? undefined : {});
    if (present === undefined) entries.delete(key);
    else entries.set(key, withSectionsSettled(child, present));
  }
  return Object.fromEntries(entries);
}
