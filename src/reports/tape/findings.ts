import { type MarkUncertainty, markUncertainty } from '../../calibration/mark-uncertainty.ts';
import { hasRoomForNear } from '../../documents/tape/sheet-rule.ts';
import { longestThatFits } from '../../documents/tape/strip-length.ts';
import { equalFlyer } from '../../flight/trajectory.ts';
import { at } from '../../numerics/at.ts';
import { fromSi } from '../../quantities/format.ts';
import type { Metres, MetresPerSecond } from '../../quantities/quantity.ts';
import { si } from '../../quantities/quantity.ts';
import { type TapeForm, tapeForm } from '../../setup/assemble/tape-form.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { marksFor } from '../../sight/marks.ts';
import {
  ENDLESS_SLIDER,
  type LabelledPlace,
  type NeighbourStrip,
  neighbourStrips,
  type Slider,
  type Tape,
  type TapePlace,
  type TapeRange,
  tapeLength,
  tapeOf,
  tapePlaces,
} from '../../sight/tape.ts';
import { asZeroed, pinAtZero } from '../../sight/zero.ts';
import { QuestionError } from '../asked/question-error.ts';
import type { Session } from '../session.ts';
import { sliderOf } from '../slider.ts';

/** The tape itself: what its table and its words say. */
export interface TapeFindings extends Tape {
  readonly form: TapeForm;
  readonly first: LabelledPlace;
  readonly last: LabelledPlace;
  /** From the outermost tick to the other. */
  readonly length: Metres;
  /** The first range that its place on the sight has no room for. */
  readonly placeEndsBefore: Metres | null;
  /** Whether the strip is too narrow for the ranges inside the turning point. */
  readonly nearLeftOut: boolean;
}

/** @throws QuestionError when the arrow touches the sight at every range asked for, or the sight has room for none */
export function tapeFindings(
  opened: OpenSetup,
  ranges: readonly TapeRange[],
  below: Metres = si(0),
): TapeFindings {
  const form = fittedForm(opened);
  const slider = sliderOf(opened);
  const tape = tapeOf(opened.calibration.rig, ranges, form.travelRatio, lowered(slider, below));
  const lower = below * form.travelRatio;
  const own = tape.ticks.map((tick) => ({ ...tick, along: si<'m'>(tick.along - lower) }));
  // A lower pin serves from where the slider stands for the first range of the top one.
  const served = below > 0 && slider.aboveZero === null ? own.filter(({ along }) => along >= -AT_ZERO) : own;
  const { ticks, endsBefore } = cutToPlace(served, form);
  if (ticks.length === 0)
    throw new QuestionError(
      tape.endsBefore === ranges[0]?.range
        ? '{from}: the arrow touches the sight at every range from there on, so that there is no tape'
        : '{from}: the sight has no room for a tape from there on',
      'Write a shorter {from}, or check bow.peep_height and the keys of "sight:".',
    );
  return {
    ...tape,
    form,
    ticks,
    first: at(ticks, 0),
    last: at(ticks, ticks.length - 1),
    length: tapeLength(ticks),
    placeEndsBefore: endsBefore,
    nearLeftOut: !hasRoomForNear(fromSi(form.width, 'mm')) && ticks.some(({ branch }) => branch === 'near'),
  };
}

/** What rounding leaves of a place at the zero, m. */
const AT_ZERO = 1e-9;

/** How far a pin goes that stands below the top one of the slider, from where it stands itself at the zero range. */
const lowered = ({ length, aboveZero }: Slider, below: Metres): Slider => {
  if (below === 0) return { length, aboveZero };
  return aboveZero === null ? ENDLESS_SLIDER : { length, aboveZero: si(aboveZero - below) };
};

/** The tape as the file has it, and as pencil lines measured it. */
function fittedForm({ setup, calibration }: OpenSetup): TapeForm {
  const form = tapeForm(setup);
  const { tape_ratio: fitted } = (calibration.elsewhere?.home ?? calibration).values;
  return fitted === undefined ? form : { ...form, travelRatio: fitted };
}

/** The ticks for which the place of the tape on the sight is long enough. */
function cutToPlace(
  ticks: readonly LabelledPlace[],
  form: TapeForm,
): { readonly ticks: readonly LabelledPlace[]; readonly endsBefore: Metres | null } {
  if (form.length === null) return { ticks, endsBefore: null };
  const longest = longestThatFits([{ ticks }], form, fromSi(form.length, 'mm'));
  const kept = ticks.filter(({ label }) => longest !== null && label <= longest);
  const left = ticks.find(({ label }) => longest === null || label > longest);
  return { ticks: kept, endsBefore: left === undefined ? null : left.range };
}

/** What a printed sheet shows besides the tape. */
export interface SheetFindings {
  /** Those that have any range on them: a slower arrow may touch the sight at all of them. */
  readonly neighbours: readonly NeighbourStrip[];
  /** The marks that were shot and lie on the tape, the zero's among them. */
  readonly shot: readonly TapePlace[];
  readonly zero: TapePlace;
  /** Where along the tape the sight stands as it was zeroed, with its own arrow in the air of its marks. */
  readonly zeroAt: Metres;
  readonly zeroShot: boolean;
  /** Nothing was shot near ranges beyond this; null when all of the tape is proven. */
  readonly provenTo: Metres | null;
}

export interface NeighboursAsked {
  /** On each side. */
  readonly count: number;
  readonly step: MetresPerSecond;
}

/** Ranges farther than this beyond the last mark rest on the model alone (common practice, no source). */
const PROVEN_BEYOND: Metres = si(18.288);
/** Marks nearer to one another than this, m, are of one range. */
const SAME_RANGE = 1e-6;

export function sheetFindings(
  opened: Session,
  { first, last, form }: TapeFindings,
  ranges: readonly TapeRange[],
  neighbours: NeighboursAsked,
): SheetFindings {
  const { rig, residuals } = opened.calibration;
  const read = residuals.flatMap(({ measurement }) =>
    measurement.kind === 'mark' || measurement.kind === 'pencil' ? [measurement.range] : [],
  );
  const isZero = (range: Metres) => Math.abs(range - rig.zeroRange) < SAME_RANGE;
  const own = rig.zeroedWith === null;
  const shot = (own ? read : []).filter(
    (range) => !isZero(range) && range >= first.range && range <= last.range,
  );
  const places = tapePlaces(rig, [rig.zeroRange, ...shot], form.travelRatio);
  const shotWithIt = opened.build === null ? read : [];
  const provenTo = si<'m'>(Math.max(rig.zeroRange, ...shotWithIt) + PROVEN_BEYOND);
  return {
    neighbours: neighbourStrips(rig, ranges, form.travelRatio, neighbours, sliderOf(opened))
      .map((strip) => ({
        ...strip,
        tape: { ...strip.tape, ticks: cutToPlace(strip.tape.ticks, form).ticks },
      }))
      .filter(({ tape }) => tape.ticks.length > 0),
    shot: places.slice(1),
    zero: at(places, 0),
    zeroAt: si(
      own ? 0 : -form.travelRatio * (pinAtZero(rig, null).down - pinAtZero(asZeroed(rig), null).down),
    ),
    zeroShot: read.some(isZero),
    provenTo: provenTo < last.range ? provenTo : null,
  };
}

/** How sure its fives are, or all of its marks when it has few. */
export function surenessOf({ calibration }: OpenSetup, { ticks }: TapeFindings): readonly MarkUncertainty[] {
  const fives = ticks.filter(({ label }) => label % 5 === 0);
  const told = (fives.length > 2 ? fives : ticks).map(({ range }) => range);
  return markUncertainty(calibration, marksFor(calibration.rig, told, equalFlyer));
}
