import { formatQuantity } from '../../quantities/format.ts';
import type { UnitSystem } from '../../quillpath.ts';
import { groupSize } from '../../reports/group-size.ts';
import type { Entry } from '../../setup/edit-entries.ts';
import { setupKeys } from '../../setup/keys.ts';
import type { FaceHit } from './target-face.ts';

const MM = 1e-3;

const inMetres = (hits: readonly FaceHit[]) =>
  hits.map(({ right, high }) => ({ right: right * MM, high: high * MM }));

const lengthText = (metres: number, system: UnitSystem): string =>
  system === 'imperial' ? formatQuantity(metres, 'in', 2) : formatQuantity(metres, 'mm', 0);

/** What was shot, as it is written into the list of marks. */
export interface Shot {
  readonly range: string;
  /** What the scale read, or where the pencil line is; empty when neither is written. */
  readonly reading: string;
  readonly pencil: string;
  readonly hits: readonly FaceHit[];
  readonly date: string | null;
}

/** Every arrow by itself where the setup file has a place for it; its middle and size where it has none. */
export function markEntry({ range, reading, pencil, hits, date }: Shot, system: UnitSystem): Entry {
  const places = inMetres(hits);
  const size = groupSize(places);
  const known = new Set(setupKeys().map(({ path }) => path));
  const arrows: Entry = known.has('marks.hits')
    ? { hits: places.map(({ right, high }) => [lengthText(right, system), lengthText(high, system)]) }
    : {
        arrows: hits.length,
        ...(size?.spread === null || size === null ? {} : { group: lengthText(size.spread, system) }),
        ...(size === null
          ? {}
          : {
              lateral: lengthText(size.middle.right, system),
              vertical: lengthText(size.middle.high, system),
            }),
      };
  return {
    range,
    ...(reading === '' ? {} : { reading: Number.isNaN(Number(reading)) ? reading : Number(reading) }),
    ...(pencil === '' ? {} : { on_tape: pencil }),
    ...(hits.length === 0 ? {} : arrows),
    ...(date === null ? {} : { date }),
  };
}

/** Middle and size of a group in a sentence. */
export function groupWords(hits: readonly FaceHit[], system: UnitSystem): string {
  const size = groupSize(inMetres(hits));
  if (size === null) return 'Tap where the arrows hit.';
  const length = (metres: number): string =>
    system === 'imperial' ? formatQuantity(metres, 'in', 1) : formatQuantity(metres, 'mm', 0);
  const { right, high } = size.middle;
  const side = `${length(Math.abs(right))} ${right < 0 ? 'left' : 'right'}`;
  const where = `${side}, ${length(Math.abs(high))} ${high < 0 ? 'low' : 'high'}`;
  const spread = size.spread === null ? '' : `; the two farthest are ${length(size.spread)} apart`;
  return `Middle ${where}${spread}.`;
}
