import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** What each part of an arrow cannot do without; a build may leave to the base what the base has. */
const NEEDED: Readonly<Record<string, readonly string[]>> = {
  shaft: ['length'],
  insert: ['mass'],
  collar: ['mass'],
  point: ['mass'],
  'point.blades': ['count', 'length', 'cutting_diameter', 'thickness'],
  vanes: ['mass', 'root_chord', 'tip_chord', 'height'],
};
const PARTS = ['arrow', 'parts'] as const;

/** What the builds must agree on, among one another and with the base. */
export function buildFaults(draft: Draft): readonly Fault[] {
  const entries = Array.from({ length: draft.count(['builds']) }, (_, entry) => ['builds', entry] as const);
  const names = entries.map((entry) => draft.text([...entry, 'name']));
  return entries.flatMap((entry, i) => [
    ...nameFaults(entry, i, names),
    ...partFaults(draft, entry),
    ...headFaults(draft, entry),
  ]);
}

function nameFaults(entry: KeyPath, i: number, names: readonly (string | undefined)[]): readonly Fault[] {
  const name = names[i];
  if (name === undefined || names.indexOf(name) === i) return [];
  return [
    {
      path: [...entry, 'name'],
      at: 'value',
      reason: `"${name}" is already the name of an earlier build`,
      allowed: 'a different name for each build',
      write: 'Write another name',
    },
  ];
}

function partFaults({ has, isSection }: Draft, entry: KeyPath): readonly Fault[] {
  const missing = (section: string, key: string): Fault => ({
    path: [...entry, ...PARTS, ...section.split('.'), key],
    at: 'missing',
    reason: 'is missing, and the arrow above does not have it either',
    allowed: 'every key that the part needs, here or in the arrow above',
    write: `Add "${key}:" to that part of the build`,
  });
  const named = Object.entries(NEEDED).filter(([section]) =>
    isSection([...entry, ...PARTS, ...section.split('.')]),
  );
  const parts = named.flatMap(([section, keys]) =>
    keys
      .filter((key) => {
        const path = [...section.split('.'), key];
        return !has([...entry, ...PARTS, ...path]) && !has([...PARTS, ...path]);
      })
      .map((key) => missing(section, key)),
  );
  if (!isSection([...entry, ...PARTS])) return parts;
  return [
    ...parts,
    ...['shaft', 'point']
      .filter((part) => !has([...entry, ...PARTS, part]) && !has([...PARTS, part]))
      .map(
        (part): Fault => ({
          path: [...entry, ...PARTS, part],
          at: 'missing',
          reason: 'is missing, and the arrow above has no parts',
          allowed: 'all parts of the build, because the arrow above is described by its totals alone',
          write: `Add "${part}:" to the parts of the build`,
        }),
      ),
  ];
}

function headFaults({ has, text }: Draft, entry: KeyPath): readonly Fault[] {
  const point = [...PARTS, 'point'] as const;
  const shape = text([...entry, ...point, 'shape']);
  const isNew = shape !== text([...point, 'shape']);
  if (shape !== 'fixed_blade' || !isNew || has([...entry, ...point, 'blades'])) return [];
  return [
    {
      path: [...entry, ...point, 'blades'],
      at: 'missing',
      reason: 'is missing for a head with fixed blades',
      allowed: 'blades: { count, length, cutting_diameter, thickness }',
      write:
        'Add "blades: { count: 3, length: 1.1 in, cutting_diameter: 1.125 in, thickness: 0.04 in }" under the point of the build',
    },
  ];
}
