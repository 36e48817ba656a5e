import { type MarkUncertainty, markUncertainty } from '../../calibration/mark-uncertainty.ts';
import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import type { Metres, MetresPerSecond } from '../../quantities/quantity.ts';
import { defaultOf } from '../../setup/assemble/defaults.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { marksFor } from '../../sight/marks.ts';
import {
  type LabelledPlace,
  type NeighbourStrip,
  neighbourStrips,
  type Tape,
  type TapePlace,
  type TapeRange,
  tapeLength,
  tapeOf,
  tapePlaces,
} from '../../sight/tape.ts';
import { isToldSpread } from '../told-spread.ts';

/** The tape itself: what its table and its words say. */
export interface TapeFindings extends Tape {
  readonly first: LabelledPlace;
  readonly last: LabelledPlace;
  /** From the outermost tick to the other. */
  readonly length: Metres;
}

/** @throws DomainError when the arrow touches the sight at every range asked for */
export function tapeFindings(opened: OpenSetup, ranges: readonly TapeRange[]): TapeFindings {
  const tape = tapeOf(opened.calibration.rig, ranges, ratioOf(opened));
  const { ticks } = tape;
  if (ticks.length === 0)
    throw new DomainError('ticks on a tape', 0, 'at least one; ask for a wider span of ranges');
  return {
    ...tape,
    first: at(ticks, 0),
    last: at(ticks, ticks.length - 1),
    length: tapeLength(ticks),
  };
}

/** Of the way along the tape to the travel of the pin. */
function ratioOf({ setup, calibration }: OpenSetup): number {
  const { tape_ratio: fitted } = (calibration.elsewhere?.home ?? calibration).values;
  if (fitted !== undefined) return fitted;
  const ratio = setup.sight.tape?.travel_ratio;
  return typeof ratio === 'number' ? ratio : defaultOf('sight.tape.travel_ratio');
}

/** What a printed sheet shows besides the tape. */
export interface SheetFindings {
  readonly neighbours: readonly NeighbourStrip[];
  /** The marks that were shot and lie on the tape. */
  readonly shot: readonly TapePlace[];
  readonly zero: TapePlace;
  /** How sure the first mark, one half-way and the last are; null when no mark ties the scale to the arrow. */
  readonly sureness: readonly MarkUncertainty[] | null;
}

export interface NeighboursAsked {
  /** On each side. */
  readonly count: number;
  readonly step: MetresPerSecond;
}

export function sheetFindings(
  opened: OpenSetup,
  { ticks, first, last }: TapeFindings,
  ranges: readonly TapeRange[],
  neighbours: NeighboursAsked,
): SheetFindings {
  const { calibration } = opened;
  const { rig, residuals } = calibration;
  const ratio = ratioOf(opened);
  const shot = residuals.flatMap(({ measurement }) =>
    (measurement.kind === 'mark' || measurement.kind === 'pencil') &&
    measurement.range >= first.range &&
    measurement.range <= last.range
      ? [measurement.range]
      : [],
  );
  const places = tapePlaces(rig, [rig.zeroRange, ...shot], ratio);
  const told = [first, at(ticks, ticks.length >> 1), last].map(({ range }) => range);
  const sureness = markUncertainty(calibration, marksFor(rig, told));
  return {
    neighbours: neighbourStrips(rig, ranges, ratio, neighbours),
    shot: places.slice(1),
    zero: at(places, 0),
    sureness: sureness.every(({ onTargetSd }) => isToldSpread(onTargetSd)) ? sureness : null,
  };
}
