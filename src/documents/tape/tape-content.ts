import { DomainError } from '../../quantities/domain-error.ts';
import type { Metres } from '../../quantities/quantity.ts';

/** Near: inside the range whose mark is lowest, where marks turn back and a position serves two ranges. */
export type Branch = 'far' | 'near';

/** A place on the tape. */
interface TapeMark {
  readonly range: Metres;
  /** Distance along the tape from the zero range's mark, positive towards longer ranges. */
  readonly along: Metres;
  readonly branch: Branch;
}

export interface TapeTick extends TapeMark {
  /** The range in the tape's unit, as printed. */
  readonly label: number;
}

/** How a strip is cut, and which way it runs; mm. */
export interface StripForm {
  readonly width: number;
  /** The length to cut it to; null when its ticks alone decide. */
  readonly length: number | null;
  /** The edge that the needle meets; the near branch takes the other one. */
  readonly ticks: 'left' | 'right';
  readonly farAt: 'bottom' | 'top';
  /** As the strip stands upright. */
  readonly numbers: 'upright' | 'sideways';
}

/** One tape, with what tells it apart once it is cut out. */
export interface TapeSource {
  /** Printed above it: the place or build, or the step of speed. */
  readonly name: string;
  /** Of the strips beside one another that share it: what they are for. */
  readonly caption: string;
  /** In small type along the strip, what tells most first. */
  readonly along: readonly string[];
  readonly ticks: readonly TapeTick[];
  /** Where along it the sight stands as it was zeroed: 0 but for the tape of another arrow or of other air. */
  readonly zeroAt: Metres;
  /** Marks that were shot. */
  readonly shot: readonly TapeMark[];
  /** Ticks of longer ranges are hollow: nothing was shot near them. Null when all of them are proven. */
  readonly provenTo: Metres | null;
}

/** Everything a printed sheet of tapes says; positions only, nothing about paper. */
export interface TapeContent {
  readonly title: string;
  /** Build, air, date: one line each. */
  readonly subtitle: readonly string[];
  readonly unit: 'yd' | 'm';
  readonly form: StripForm;
  readonly zero: { readonly range: Metres; readonly branch: Branch; readonly shot: boolean };
  /** The tapes asked for, printed in copies. */
  readonly mains: readonly TapeSource[];
  /** Nearby tapes, once each: left of the main ones, and right of them. */
  readonly before: readonly TapeSource[];
  readonly after: readonly TapeSource[];
  /** When to take a nearby tape, and what a hollow tick says; in the legend. */
  readonly nearby: string | null;
  readonly unproven: string;
  readonly warnings: readonly string[];
  /** Every strip is to say that it is a draft. */
  readonly isDraft?: boolean;
}

export const tapesOf = ({ before, mains, after }: TapeContent): readonly TapeSource[] => [
  ...before,
  ...mains,
  ...after,
];

/** @throws DomainError naming the first number that could not be drawn */
export function checkTapeContent(content: TapeContent): void {
  const { form, mains } = content;
  if (mains.length === 0) throw new DomainError('tapes on a sheet', 0, 'at least one');
  if (!(form.width >= 5 && form.width <= 20))
    throw new DomainError('the width of the tape (mm)', form.width, '5 to 20');
  for (const { ticks, shot, zeroAt } of tapesOf(content)) {
    if (ticks.length === 0)
      throw new DomainError('ticks on a tape', 0, 'at least one; ask for a wider span of ranges');
    for (const { label } of ticks)
      if (!(label >= 0 && label < 1000)) throw new DomainError('a range on the tape', label, '0 to 999');
    for (const { along } of [...ticks, ...shot, { along: zeroAt }])
      if (!Number.isFinite(along))
        throw new DomainError('a distance along the tape (m)', along, 'finite numbers');
  }
}
