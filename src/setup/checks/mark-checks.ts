import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';
import { notPairs } from './not-pairs.ts';

/** Every mark of the file, the days' among them. */
export function markPaths({ count }: Draft): readonly KeyPath[] {
  const entries = (path: KeyPath): readonly KeyPath[] =>
    Array.from({ length: count(path) }, (_, entry) => [...path, entry]);
  return [
    ...entries(['marks']),
    ...entries(['days']).flatMap((day): readonly KeyPath[] => entries([...day, 'marks'])),
  ];
}

/** What the keys of one mark must agree on. */
export const markFaults = (draft: Draft): readonly Fault[] =>
  markPaths(draft)
    .filter(draft.isSection)
    .flatMap((mark): readonly Fault[] => {
      const doubled = doubledFaults(draft, mark);
      return doubled.length > 0 ? doubled : singleFaults(draft, mark);
    });

function singleFaults({ has, quantity }: Draft, mark: KeyPath): readonly Fault[] {
  const holds = (key: string) => has([...mark, key]);
  if (holds('group') && quantity('marks.arrows', [...mark, 'arrows']) === 1)
    return [
      {
        path: [...mark, 'group'],
        at: 'value',
        reason: 'one arrow does not make a group',
        allowed: 'a group of at least two arrows',
        write: 'Remove "group", or write how many arrows were shot',
      },
    ];
  if (holds('reading') || holds('on_tape') || holds('pin')) return [];
  if (holds('vertical'))
    return [
      {
        path: [...mark, 'vertical'],
        at: 'key',
        reason: 'vertical cannot be used without the reading that was set',
        allowed: 'vertical together with reading',
        write: 'Add "reading: 31.9" to that entry, or remove vertical',
      },
    ];
  if (holds('lateral') || holds('hits')) return [];
  return [
    {
      path: [...mark, 'reading'],
      at: 'missing',
      reason: 'is missing, and so is lateral, so nothing can be learned from this mark',
      allowed: 'what the scale read, how far left or right the group was, or both',
      write: 'Add "reading: 31.9" to that entry',
    },
  ];
}

/** What hits tell by themselves. */
const TOLD_BY_HITS = ['arrows', 'group', 'lateral', 'vertical'] as const;

/** What a mark says twice, and hits that are not pairs. */
function doubledFaults({ has, count }: Draft, mark: KeyPath): readonly Fault[] {
  const holds = (key: string) => has([...mark, key]);
  if (holds('reading') && holds('on_tape'))
    return [
      {
        path: [...mark, 'on_tape'],
        at: 'key',
        reason: 'the mark has a reading of the scale as well, and one group would count twice',
        allowed: 'a reading, or a line on the strip',
        write: 'Remove one of them',
      },
    ];
  if (!holds('hits')) return [];
  const hits = [...mark, 'hits'];
  const told = TOLD_BY_HITS.filter(holds).map(
    (key): Fault => ({
      path: [...mark, key],
      at: 'key',
      reason: `the hits tell ${key} by themselves`,
      allowed: 'hits, or arrows with group, lateral and vertical',
      write: `Remove "${key}", or remove "hits"`,
    }),
  );
  if (count(hits) === 0) return [...told, notPairs(hits)];
  const odd = Array.from({ length: count(hits) }, (_, i) => [...hits, i]).filter((pair) => count(pair) !== 2);
  return [...told, ...odd.map(notPairs)];
}

/** Readings need a scale that they are read on. */
export function scaleFaults(draft: Draft): readonly Fault[] {
  const { has } = draft;
  const read = markPaths(draft).filter((mark) => has([...mark, 'reading']));
  if (read.length > 0 && !has(['sight', 'scale']))
    return [
      {
        path: ['sight', 'scale'],
        at: 'missing',
        reason: 'is missing, but the marks have readings of a scale',
        allowed: 'scale: { travel_per_unit, increases, at_zero }',
        write: 'Add "scale: { travel_per_unit: unknown, increases: down }" under "sight:"',
      },
    ];
  return [];
}
