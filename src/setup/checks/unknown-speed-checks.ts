import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';
import { markPaths } from './mark-checks.ts';

/** A speed that nobody measured needs marks that tell it, or the rating of the bow. */
export function unknownSpeedFaults(draft: Draft): readonly Fault[] {
  const { text, has, count } = draft;
  const builds = Array.from({ length: count(['builds']) }, (_, i) => ['builds', i, 'launch', 'speed']);
  const inBuilds = builds
    .filter((path) => text(path)?.trim() === 'unknown')
    .map(
      (path): Fault => ({
        path,
        at: 'value',
        reason: 'the speed of a build that was not measured follows from the energy of the bow',
        allowed: 'a speed from a chronograph',
        write: 'Remove "speed" from that build',
      }),
    );
  if (text(['launch', 'speed'])?.trim() !== 'unknown' || has(['bow', 'rating']) || isTold(draft))
    return inBuilds;
  return [
    ...inBuilds,
    {
      path: ['launch', 'speed'],
      at: 'value',
      reason: 'is unknown, and nothing in the file tells it',
      allowed:
        'unknown together with marks at two ranges and a known travel_per_unit (or a known travel_ratio of a strip ' +
        'with pencil lines), a chronograph reading, or bow.rating',
      write:
        'Add marks at two ranges and measure the travel_per_unit, or add "rating: { speed: 335 fps }" under "bow:"',
    },
  ];
}

function isTold(draft: Draft): boolean {
  const { has, text, count } = draft;
  const isNumber = (written: string | undefined): boolean =>
    written !== undefined && written.trim() !== 'unknown';
  const scaled = isNumber(text(['sight', 'scale', 'travel_per_unit']));
  const geared = isNumber(text(['sight', 'tape', 'travel_ratio']));
  const told = markPaths(draft).filter(
    (mark) => (scaled && has([...mark, 'reading'])) || (geared && has([...mark, 'on_tape'])),
  );
  const ranges = new Set(told.map((mark) => draft.quantity('marks.range', [...mark, 'range'])));
  const days = Array.from({ length: count(['days']) }, (_, i) => ['days', i]);
  const timed =
    count(['speeds']) > 0 || days.some((day) => has([...day, 'speed']) || count([...day, 'speeds']) > 0);
  return ranges.size > 1 || timed;
}
