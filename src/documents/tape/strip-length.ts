import { DomainError } from '../../quantities/domain-error.ts';
import type { StripForm, TapeSource, TapeTick } from './tape-content.ts';
import { endsOf } from './tape-strip.ts';

/** A tape that its place cannot hold. */
export class TapeTooLong extends DomainError {
  /** The longest range, as printed, with which it would fit; null when none does. */
  readonly longest: number | null;
  /** Of the place, mm. */
  readonly room: number;

  constructor(length: number, room: number, longest: number | null) {
    super('the length of the tape on paper (mm)', Math.ceil(length), `at most ${Math.floor(room)}`);
    this.name = 'TapeTooLong';
    this.longest = longest;
    this.room = room;
  }
}

/** From the outermost mark to the other, the zero's among them, mm. */
const markedLength = (ticks: readonly TapeTick[]): number => {
  const along = [0, ...ticks.map((tick) => 1000 * tick.along)];
  return along.reduce((a, b) => Math.max(a, b)) - along.reduce((a, b) => Math.min(a, b));
};

/** The length of the strip that a tape needs, mm; where numbers crowd it may need a little more. */
const stripLength = (ticks: readonly TapeTick[], form: Pick<StripForm, 'numbers'>): number =>
  markedLength(ticks) + endsOf(form);

/** The longest range, as printed, up to which every one of the tapes fits a length (mm); null when not even the first does. */
export function longestThatFits(
  tapes: readonly Pick<TapeSource, 'ticks'>[],
  form: Pick<StripForm, 'numbers'>,
  length: number,
): number | null {
  const labels = [...new Set(tapes.flatMap(({ ticks }) => ticks.map(({ label }) => label)))];
  return labels
    .toSorted((a, b) => a - b)
    .reduce<number | null>((longest, label) => {
      const fits = tapes.every(
        ({ ticks }) =>
          stripLength(
            ticks.filter((tick) => tick.label <= label),
            form,
          ) <= length,
      );
      return fits ? label : longest;
    }, null);
}
