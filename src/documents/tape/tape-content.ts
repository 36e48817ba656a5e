import { DomainError } from '../../quantities/domain-error.ts';
import type { Metres } from '../../quantities/quantity.ts';

/** Near: inside the range whose mark is lowest, where marks turn back and a position serves two ranges. */
export type Branch = 'far' | 'near';

/** A place on the tape. */
export interface TapeMark {
  readonly range: Metres;
  /** Distance along the tape from the zero range's mark, positive towards longer ranges. */
  readonly along: Metres;
  readonly branch: Branch;
}

export interface TapeTick extends TapeMark {
  /** The range in the tape's unit, as printed. */
  readonly label: number;
}

interface NeighbourTape {
  /** What sets it apart, short enough for the head of a narrow strip: "-4 ft/s". */
  readonly name: string;
  readonly ticks: readonly TapeTick[];
}

/** Everything a printed tape says; positions only, nothing about paper. */
export interface TapeContent {
  readonly title: string;
  /** Build, air, date: one line each. */
  readonly subtitle: readonly string[];
  /** The name at the head of the main strip, such as its launch speed. */
  readonly name: string;
  readonly unit: 'yd' | 'm';
  /** Which way marks grow on the sight: the side of the strip that longer ranges go to. */
  readonly increases: 'down' | 'up';
  readonly ticks: readonly TapeTick[];
  /** Marks that were shot. */
  readonly calibration: readonly TapeMark[];
  readonly zero: { readonly range: Metres; readonly branch: Branch };
  readonly neighbours: readonly NeighbourTape[];
  readonly warnings: readonly string[];
  /** Every strip is to say that it is a draft. */
  readonly isDraft?: boolean;
}

/** @throws DomainError naming the first number that could not be drawn */
export function checkTapeContent(content: TapeContent): void {
  const tapes = [content.ticks, ...content.neighbours.map(({ ticks }) => ticks)];
  for (const ticks of tapes) {
    if (ticks.length === 0)
      throw new DomainError('ticks on a tape', 0, 'at least one; ask for a wider span of ranges');
    for (const { label } of ticks)
      if (!(label >= 0 && label < 1000)) throw new DomainError('a range on the tape', label, '0 to 999');
  }
  for (const { along } of [...tapes.flat(), ...content.calibration])
    if (!Number.isFinite(along))
      throw new DomainError('a distance along the tape (m)', along, 'finite numbers');
}
