import { type Metres, si } from '../../quantities/quantity.ts';
import type { SetupFile } from '../schema/schema.ts';
import { DEFAULT_WORDS, defaultOf } from './defaults.ts';

/** How the tape on the sight is cut, and which way it runs. */
export interface TapeForm {
  readonly width: Metres;
  /** Of the place it goes on; null when its ranges alone decide. */
  readonly length: Metres | null;
  /** The edge that the needle meets. */
  readonly ticks: 'left' | 'right';
  readonly farAt: 'bottom' | 'top';
  readonly numbers: 'upright' | 'sideways';
  /** Of the way along the tape to the travel of the pin, as the file has it; pencil lines may measure another. */
  readonly travelRatio: number;
}

/**
 * The tape as the file has it. Where it does not say, the needle is taken to stand on the archer's left of a right-handed
 * sight, and to move down with the pin unless the numbers of the scale grow the other way.
 */
export function tapeForm({ bow, sight }: Pick<SetupFile, 'bow' | 'sight'>): TapeForm {
  const tape = sight.tape ?? {};
  const hand = bow.hand ?? DEFAULT_WORDS['bow.hand'];
  const increases = sight.scale?.increases ?? DEFAULT_WORDS['sight.scale.increases'];
  return {
    width: si(tape.width ?? defaultOf('sight.tape.width')),
    length: tape.length ?? null,
    ticks: tape.ticks ?? (hand === 'left' ? 'right' : 'left'),
    farAt: tape.far_at ?? (increases === 'up' ? 'top' : 'bottom'),
    numbers: tape.numbers ?? DEFAULT_WORDS['sight.tape.numbers'],
    travelRatio:
      typeof tape.travel_ratio === 'number' ? tape.travel_ratio : defaultOf('sight.tape.travel_ratio'),
  };
}
