import { at } from '../../numerics/at.ts';
import { bracketedRoot } from '../../numerics/root.ts';
import { fromSi, toSi } from '../../quantities/format.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { archerSpread } from '../../setup/assemble/archer-spread.ts';
import { centreSdOf } from '../../setup/assemble/assemble-marks.ts';
import { fixedPins, sliderPins } from '../../setup/assemble/pins.ts';
import { shotsIn } from '../../setup/assemble/shots.ts';
import type { MarkEntry } from '../../setup/schema/schema.ts';
import { type MarkTable, marksFor } from '../../sight/marks.ts';
import { type PinHits, pinHits } from '../../sight/pins.ts';
import { asFarAsItGoes } from '../../sight/reach.ts';
import type { Rig } from '../../sight/rig.ts';
import { travelAt } from '../../sight/scale.ts';
import { asZeroed } from '../../sight/zero.ts';
import { limitedQuantity } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import type { Session } from '../session.ts';

/** One pin of the sight. */
export interface PinFound extends PinHits {
  /** Counted from the highest. */
  readonly pin: number;
  /** Below the first. */
  readonly below: Metres;
  /** What it is set for, of fixed pins; null on a slider. */
  readonly setFor: Metres | null;
  /** Whether marks that name it say where it stands. */
  readonly shot: boolean;
}

/** A hit with a pin held on a mark that it is not for. */
export interface BetweenHit {
  readonly pin: number;
  readonly range: Metres;
  readonly height: Metres;
}

/** What every pin of a slider is on for, with the top one set for a range. */
interface SliderSetting {
  readonly top: Metres;
  readonly ranges: readonly (Metres | null)[];
}

export interface PinsFindings {
  readonly ring: Metres;
  readonly pins: readonly PinFound[];
  readonly between: readonly BetweenHit[];
  /** Of a slider; empty for fixed pins. */
  readonly settings: readonly SliderSetting[];
}

export interface PinsAsked {
  /** Pins in place of the file's, as they were written; null for the file's own. */
  readonly set: string | null;
  readonly ring: Metres;
  readonly every: Metres;
  readonly beyond: Metres;
  readonly to: Metres;
}

/** Paths are flown to one of these ranges, m, the first whose pin stands below the lowest of the sight. */
const ENDS = [90, 120, 150, 200, 260];
const RANGE_TOLERANCE = 1e-7;

/** @throws QuestionError for pins that cannot be; NumericalError when the arrow does not get to the range of one */
export function pinsFindings(session: Session, asked: PinsAsked): PinsFindings {
  const { calibration } = session;
  const pinsOfSight = pinsAsked(session, asked.set);
  const [fixed, slider] = [fixedPins({ pins: pinsOfSight }), sliderPins({ pins: pinsOfSight })];
  const home = solvedFor(asZeroed(calibration.rig), { fixed, slider, to: asked.to });
  const stated = fixed === null ? (slider ?? []).map((below) => home.zero.down + below) : pinsAt(home, fixed);
  const shot = stated.map((down, i) =>
    asked.set === null ? shotPin(session, home, { pin: i + 1, down, isFixed: fixed !== null }) : null,
  );
  const downs = shot.map((found, i) => found ?? at(stated, i));
  const here =
    calibration.rig.zeroedWith === null
      ? home
      : solvedFor(calibration.rig, { fixed, slider, to: asked.to }, downs);
  const { paths, shared } = here;
  const pins = downs.map(
    (down, i): PinFound => ({
      ...pinHits(paths, down, asked.ring, shared.end),
      pin: i + 1,
      below: si(down - at(downs, 0)),
      setFor: fixed === null ? null : at(fixed, i),
      shot: at(shot, i) !== null,
    }),
  );
  return {
    ring: asked.ring,
    pins,
    between: betweenHits(pins, here, asked),
    settings: slider === null ? [] : sliderSettings(here, pins, calibration.rig.zeroRange, asked),
  };
}

/** What most sights with several pins are set for where nobody says, in the unit shown (common practice, no source). */
const USUAL_PINS = [20, 30, 40];

/** The pins asked about, those of the file, or the usual ones. @throws QuestionError for pins that do not go down */
function pinsAsked({ setup, units }: Session, set: string | null): readonly Metres[] {
  if (set === null) return setup.sight.pins ?? USUAL_PINS.map((range) => si(toSi(range, units.range)));
  const pins = set.split(',').map((text) => limitedQuantity('set', text.trim(), 'length', FARTHEST_PIN));
  const rising = pins.every((pin, i) => pin >= 0 && (i === 0 || pin > at(pins, i - 1)));
  if (rising && (at(pins, 0) === 0 || at(pins, 0) >= NEAREST)) return pins;
  throw new QuestionError(
    `{set}: ${set} are no pins from the highest to the lowest`,
    'Write {set} "20 yd, 30 yd, 40 yd", or for a slider "0 mm, 7.5 mm, 14 mm".',
  );
}
/** A pin set for a farther range is a slip of the pen; no arrow gets there. */
const FARTHEST_PIN = '500 yd';
/** No pin is set for a nearer range, m. */
const NEAREST = 0.9;

/** Marks of the rig to beyond the lowest pin, so that the paths of all pins can be read from them. */
function solvedFor(rig: Rig, { fixed, slider, to }: PinsWanted, downs: readonly number[] = []): MarkTable {
  const wanted = fixed ?? (to > rig.zeroRange ? [to] : []);
  const least = wanted.reduce<number>((a, b) => Math.max(a, b), rig.zeroRange);
  const below = slider === null ? 0 : Math.max(...slider);
  const ends = ENDS.filter((end) => end > 1.3 * least);
  const solve = (end: number) => {
    const ranges = [...wanted, rig.zeroRange, end].toSorted((a, b) => a - b).map((range) => si<'m'>(range));
    return asFarAsItGoes(rig, ranges, (reached) => marksFor(rig, reached));
  };
  for (const end of ends) {
    const { solved, beyond } = solve(end);
    const lowest = solved.marks
      .filter(({ range }) => range <= least + RANGE_TOLERANCE)
      .map(({ travel }) => solved.zero.down + travel + below);
    if (beyond !== null || solved.shared.span.hi > Math.max(...lowest, ...downs)) return solved;
  }
  return solve(1.3 * least).solved;
}

interface PinsWanted {
  readonly fixed: readonly Metres[] | null;
  readonly slider: readonly Metres[] | null;
  /** The farthest setting of a slider. */
  readonly to: Metres;
}

/** Pins at rest, m down, that are on for ranges which the table was solved for. */
const pinsAt = ({ marks, zero }: MarkTable, ranges: readonly Metres[]): readonly number[] =>
  ranges.map((range) => {
    const mark = marks.find((each) => Math.abs(each.range - range) < RANGE_TOLERANCE);
    if (mark !== undefined) return zero.down + mark.travel;
    throw new QuestionError(
      `the arrow does not get to ${fromSi(range, 'yd').toFixed(0)} yd, for which a pin is set`,
      'Take that pin out of sight.pins, or check speed, mass and drag.',
    );
  });

interface Stated {
  readonly pin: number;
  readonly down: number;
  readonly isFixed: boolean;
}

/** Where marks that name a pin say that it stands, each by how well its group shows it; null when none names it. */
function shotPin(session: Session, table: MarkTable, { pin, down, isFixed }: Stated): number | null {
  const { setup } = session;
  const spread = archerSpread(session);
  const found = shotsIn(setup)
    .marks.filter((mark) => mark.pin === pin && (isFixed || pin > 1))
    .map((mark) => ({
      down: downOf(mark, table, down) - (isFixed ? 0 : topTravel(session, mark)),
      weight: (mark.range / centreSdOf(mark, spread)) ** 2,
    }));
  if (found.length === 0) return null;
  const total = found.reduce((sum, { weight }) => sum + weight, 0);
  return found.reduce((sum, each) => sum + each.weight * each.down, 0) / total;
}

/** How far the slider stood below its place at the zero range. */
function topTravel({ calibration }: Session, { reading }: MarkEntry): number {
  const { scale } = calibration.rig;
  return scale === null || reading === undefined ? 0 : travelAt(scale, reading);
}

/** The pin whose path is where the group was, m down. */
function downOf({ range, vertical }: MarkEntry, { paths, shared }: MarkTable, stated: number): number {
  const { lo, hi } = shared.span;
  const miss = (down: number): number => paths.height(down, range) - (vertical ?? si(0));
  if (miss(lo) * miss(hi) > 0) return stated;
  return bracketedRoot(miss, lo, hi, { tolerance: 1e-8 });
}

/** Multiples of the step between each pin and the next, with both of them, and beyond the lowest with it alone. */
function betweenHits(
  pins: readonly PinFound[],
  { paths, shared }: MarkTable,
  { every, beyond }: PinsAsked,
): readonly BetweenHit[] {
  return pins.flatMap((upper, i) => {
    const lower = pins[i + 1];
    if (upper.range === null) return [];
    const end = lower?.range ?? Math.min(upper.range + beyond, shared.end);
    const first = Math.floor(upper.range / every + ALMOST) + 1;
    const last = Math.ceil(end / every - ALMOST) - (lower === undefined ? 0 : 1);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => (first + k) * every)
      .filter((range) => range <= shared.end)
      .flatMap((range) =>
        [upper, ...(lower === undefined ? [] : [lower])].map(({ pin, down }) => ({
          pin,
          range: si<'m'>(range),
          height: si<'m'>(paths.height(down, range)),
        })),
      );
  });
}

/** A range found this close to a step, of the step, is the step: a crossing is found to a tenth of a millimetre. */
const ALMOST = 1e-3;

/** At every ten of the unit from the zero range on, what the lower pins are on for. */
function sliderSettings(
  table: MarkTable,
  pins: readonly PinFound[],
  zeroRange: Metres,
  { every, to }: PinsAsked,
): readonly SliderSetting[] {
  const step = 2 * every;
  const { paths, shared } = table;
  const count = Math.max(0, Math.floor((Math.min(to, shared.end) - zeroRange) / step + 1e-6));
  return Array.from({ length: count + 1 }, (_, k) => si<'m'>(zeroRange + k * step)).map((top) => {
    const set = bracketedDown(table, top);
    return {
      top,
      ranges: pins.map(({ below }) =>
        set === null || set + below > shared.span.hi
          ? null
          : pinHits(paths, set + below, 0, shared.end).range,
      ),
    };
  });
}

function bracketedDown({ paths, shared }: MarkTable, range: Metres): number | null {
  const { lo, hi } = shared.span;
  const miss = (down: number): number => paths.height(down, range);
  return miss(lo) * miss(hi) > 0 ? null : bracketedRoot(miss, lo, hi, { tolerance: 1e-9 });
}
