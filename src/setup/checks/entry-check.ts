import { fromSi } from '../../quantities/format.ts';
import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** Looks at one entry of a list of the file, at this path. */
export type Check = (draft: Draft, path: KeyPath) => readonly Fault[];

/** A range that is within the limits of the key and still no use for a step; yards. */
export const rangeCheck =
  ({ least, most }: { readonly least?: number; readonly most?: number }, why: string): Check =>
  ({ quantity, text }, path) => {
    const range = quantity('tuning.log.range', [...path, 'range']);
    if (range === undefined) return [];
    const yards = fromSi(range, 'yd');
    const found = text([...path, 'range']);
    const rounded = 1e-9;
    if (least !== undefined && yards < least - rounded)
      return [
        fault(
          path,
          'range',
          `"${found}" is too near: ${why}`,
          `${least} yd or farther`,
          `Write "${least} yd" or farther`,
        ),
      ];
    if (most !== undefined && yards > most + rounded)
      return [
        fault(
          path,
          'range',
          `"${found}" is too far: ${why}`,
          `up to ${most} yd`,
          'Write "30 yd", and shoot there',
        ),
      ];
    return [];
  };

/** A fault of the value at a key of the entry. */
export const fault = (path: KeyPath, key: string, reason: string, allowed: string, write: string): Fault => ({
  path: [...path, key],
  at: 'value',
  reason,
  allowed,
  write,
});

/** Two keys of which one says nothing without the other. */
export const together =
  (a: string, b: string, reason: string, example: (missing: string) => string): Check =>
  ({ has }, path) =>
    [
      [a, b],
      [b, a],
    ].flatMap(([there = '', lacking = '']): readonly Fault[] =>
      has([...path, there]) && !has([...path, lacking])
        ? [
            {
              path: [...path, lacking],
              at: 'missing',
              reason,
              allowed: `${a} and ${b}`,
              write: `Add "${lacking}: ${example(lacking)}" to that entry`,
            },
          ]
        : [],
    );

/** At least one of several ways to fill an entry. */
export const oneOf =
  (keys: readonly string[], reason: string, write: string): Check =>
  ({ has }, path) =>
    keys.some((key) => has([...path, key]))
      ? []
      : [{ path: [...path, keys[0] ?? ''], at: 'missing', reason, allowed: keys.join(', '), write }];

/** A key without which another one says nothing. */
export const needs =
  (key: string, withKey: string, example: string): Check =>
  ({ has, text }, path) =>
    has([...path, withKey]) && !has([...path, key])
      ? [
          {
            path: [...path, key],
            at: 'missing',
            reason: `is missing, and ${withKey} says nothing without it`,
            allowed: `${key} with ${withKey}${text([...path, withKey]) === undefined ? '' : ' as written'}`,
            write: `Add "${key}: ${example}" to that entry`,
          },
        ]
      : [];
