import { sumGiven } from '../sum-given.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

const parts = ['arrow', 'parts'] as const;

/** Whether the file says what the arrow weighs, and its parts agree. */
export function massFaults(draft: Draft): readonly Fault[] {
  if (draft.has(['arrow', 'mass'])) return heavyPartsFaults(draft);
  const needed = [
    [...parts, 'shaft', 'length'],
    [...parts, 'shaft', 'mass_per_length'],
    [...parts, 'point', 'mass'],
  ];
  if (needed.every((path) => draft.has(path))) return [];
  return [
    {
      path: ['arrow', 'mass'],
      at: 'missing',
      reason: 'is missing, and the parts do not add up to it',
      allowed:
        'the mass of the whole arrow, or parts with shaft: { length, mass_per_length } and point: { mass }',
      write: 'Add "mass: 452 gr" under "arrow:"',
    },
  ];
}

function heavyPartsFaults(draft: Draft): readonly Fault[] {
  const total = draft.quantity('arrow.mass');
  const others = Array.from({ length: draft.count([...parts, 'others']) }, (_, entry) =>
    draft.quantity('arrow.parts.others.mass', [...parts, 'others', entry, 'mass']),
  );
  const vane = draft.quantity('arrow.parts.vanes.mass');
  const count = draft.quantity('arrow.parts.vanes.count');
  // Without a count there is one at least.
  const vanes = vane === undefined || count === undefined ? vane : vane * count;
  const fittings = sumGiven(
    draft.quantity('arrow.parts.insert.mass'),
    draft.quantity('arrow.parts.collar.mass'),
    draft.quantity('arrow.parts.point.mass'),
    draft.quantity('arrow.parts.nock.mass'),
    vanes,
    ...others,
  );
  if (total === undefined || fittings < total) return [];
  return [
    {
      path: ['arrow', 'mass'],
      at: 'value',
      reason: 'the parts without the shaft weigh as much as the whole arrow',
      allowed: 'more than point, insert, collar, nock, vanes and others together',
      write: 'Weigh the arrow again, or correct the part that is wrong',
    },
  ];
}
