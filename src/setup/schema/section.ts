import * as z from 'zod/mini';
import type { LimitKey } from './limits.ts';
import { quantityAt, uncertaintyAt } from './quantity-leaf.ts';

/** The key path of a key in a section; top-level keys are in the section ''. */
type PathOf<S extends string, K extends string> = S extends '' ? K : `${S}.${K}`;
/** The keys that limits.ts has under a section. */
type KeyUnder<S extends string> = S extends ''
  ? LimitKey
  : LimitKey extends infer P
    ? P extends `${S}.${infer K}`
      ? K
      : never
    : never;
type At<S extends string, K extends string> = Extract<PathOf<S, K>, LimitKey>;

type Uncertainties<S extends string, K extends string> = {
  [P in K as `${P}_sd`]: z.ZodMiniExactOptional<ReturnType<typeof uncertaintyAt<At<S, P>>>>;
};
type Required<S extends string, K extends string> = Uncertainties<S, K> & {
  [P in K]: ReturnType<typeof quantityAt<At<S, P>>>;
};
type Optional<S extends string, K extends string> = Uncertainties<S, K> & {
  [P in K]: z.ZodMiniExactOptional<ReturnType<typeof quantityAt<At<S, P>>>>;
};

const pathOf = (section: string, key: string): LimitKey =>
  (section === '' ? key : `${section}.${key}`) as LimitKey;

/** Keys that must be there, each with its `_sd` that may be. */
export const required = <S extends string, K extends KeyUnder<S>>(
  section: S,
  keys: readonly K[],
): Required<S, K> =>
  // Object.fromEntries forgets which key holds which schema
  Object.fromEntries(
    keys.flatMap((key) => [
      [key, quantityAt(pathOf(section, key))],
      [`${key}_sd`, z.exactOptional(uncertaintyAt(pathOf(section, key)))],
    ]),
  ) as Required<S, K>;

/** Keys that may be there, each with its `_sd`. */
export const optional = <S extends string, K extends KeyUnder<S>>(
  section: S,
  keys: readonly K[],
): Optional<S, K> =>
  // the same again
  Object.fromEntries(
    keys.flatMap((key) => [
      [key, z.exactOptional(quantityAt(pathOf(section, key)))],
      [`${key}_sd`, z.exactOptional(uncertaintyAt(pathOf(section, key)))],
    ]),
  ) as Optional<S, K>;
