import { at } from '../../numerics/at.ts';
import { lineZero } from '../../numerics/fieller.ts';
import { chiSquaredQuantile, studentQuantile } from '../../numerics/quantiles.ts';
import { independent, lineThrough } from '../../numerics/weighted-line.ts';
import { INCH } from '../../quantities/exact.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import { inside, NOTICED, type TorqueSetting, type TorqueShots, torqueSettings } from './torque-settings.ts';

/**
 * What a full test turns the bow from left to right, rad: what common practice implies, hits 5 in closer at 50 yd for an inch of
 * sight, 5 in / (1800 in × 27.25 in (1/32 − 1/33 in)). No source.
 */
const USUAL_TORQUE = 0.11;
/** How far one extension alone may mislead about the distance: a factor of 1.6, or 15 % where the turn was measured. */
const USUAL_TORQUE_ERROR = Math.log(1.6);
const MEASURED_TORQUE_ERROR = 0.15;
/** The first move, from one extension, goes no farther. */
const FIRST_MOVE = INCH;
/** An ordinary shot is torqued by this share of the test, about half a degree; assumed. */
const ORDINARY_TORQUE = 1 / 12;

type TorqueVerdict = 'done' | 'first move' | 'move' | 'not settled' | 'contradiction';

export interface TorqueNull {
  readonly verdict: TorqueVerdict;
  /** Of one arrow in one direction, per metre of range, from these shots and what was known before. */
  readonly arrowSd: number;
  readonly settings: readonly TorqueSetting[];
  /** Where the sight would stand for hits that do not mind torque; null when the shots cannot say. */
  readonly null: {
    readonly extension: Metres;
    readonly sd: Metres;
    /** 19 times in 20; null from one extension. */
    readonly interval: readonly [Metres, Metres] | null;
    readonly method: 'one extension' | 'two or more extensions';
  } | null;
  /** From left to right, as the shots imply; assumed from one extension. */
  readonly torque: Radians | null;
  /** The launch's own share of the torque. */
  readonly launchShare: number | null;
  /** To be made now, farther positive; 0 when done, null when the shots cannot say. */
  readonly move: Metres | null;
  readonly now: {
    readonly extension: Metres;
    readonly range: Metres;
    readonly perSideInSd: number;
    /** Of an ordinary group by the ordinary torque, as a share. */
    readonly groupGrowth: number;
  };
  /** Three or more extensions whose shifts do not lie on one line. */
  readonly offLine: boolean;
}

export interface TorqueQuestion {
  /** In the order they were shot; at least one. */
  readonly shots: readonly TorqueShots[];
  /** From the peep to the grip's deepest point at full draw: peep to pin less the extension it was measured at. */
  readonly gripToPeep: Metres;
  /** Standard deviation of one arrow per metre of range, own or usual. */
  readonly arrowSd: number;
}

/**
 * The extension of the sight at which hand torque does not move the hit, from shots torqued left and right on purpose.
 *
 * With u one over the distance from peep to pin, the hits over the range are a straight line in u, whose zero needs neither the
 * torque nor the place of the grip.
 *
 *   hit/range = t (k − 1) + t D u
 *
 * @throws RangeError without shots
 */
export function torqueNull({ shots, gripToPeep: D, arrowSd }: TorqueQuestion): TorqueNull {
  const { settings, spread, freedom } = torqueSettings(shots, arrowSd);
  const last = at(settings, settings.length - 1);
  const perSide = Math.abs(last.shift) / 2 / last.range;
  const done = inside(last, spread);
  const found = nullOf(settings, shots, D, freedom);
  const here = {
    extension: last.extension,
    range: last.range,
    perSideInSd: perSide / spread,
    groupGrowth: Math.hypot(1, (ORDINARY_TORQUE * 2 * perSide) / spread) - 1,
  };
  const extensions = new Set(settings.map(({ extension }) => extension)).size;
  const seen: TorqueVerdict = extensions === 1 ? 'first move' : found.verdict;
  const verdict: TorqueVerdict = done ? 'done' : seen;
  const { place } = found;
  return {
    verdict,
    arrowSd: spread,
    settings,
    null: place,
    torque: found.torque,
    launchShare: place === null ? null : place.extension / (D + place.extension),
    move: moveOf(verdict, place === null ? null : place.extension - last.extension),
    now: here,
    offLine: found.offLine,
  };
}

function moveOf(verdict: TorqueVerdict, whole: number | null): Metres | null {
  if (verdict === 'done') return si(0);
  if (whole === null || verdict === 'not settled' || verdict === 'contradiction') return null;
  return si(verdict === 'first move' ? Math.min(FIRST_MOVE, Math.max(-FIRST_MOVE, whole)) : whole);
}

interface Found {
  readonly verdict: TorqueVerdict;
  readonly place: TorqueNull['null'];
  readonly torque: Radians | null;
  readonly offLine: boolean;
}

function nullOf(
  settings: readonly TorqueSetting[],
  shots: readonly TorqueShots[],
  D: number,
  freedom: number,
): Found {
  const u = settings.map(({ extension }) => 1 / (D + extension));
  const y = settings.map(({ shift, range }) => shift / range);
  const v = settings.map(({ shiftSd, range }) => (shiftSd / range) ** 2);
  if (new Set(u).size === 1) return oneExtension(settings, shots, D);
  const line = lineThrough(u, y, independent(v));
  const zero = lineZero(line, studentQuantile(NOTICED, freedom));
  const closed = zero.interval !== null && zero.interval[0] > 0;
  const offLine = settings.length > 2 && line.chiSquared > chiSquaredQuantile(SURELY, settings.length - 2);
  const torque = si<'rad'>(line.slope / D);
  if (!closed || zero.interval === null)
    return { verdict: 'not settled', place: null, torque: null, offLine };
  if (line.slope < 0) return { verdict: 'contradiction', place: null, torque: null, offLine };
  const [low, high] = zero.interval;
  const place = {
    extension: si<'m'>(1 / zero.place - D),
    sd: si<'m'>(zero.sd / zero.place ** 2),
    interval: [si<'m'>(1 / high - D), si<'m'>(1 / low - D)] as const,
    method: 'two or more extensions' as const,
  };
  return { verdict: 'move', place, torque, offLine };
}

/** The point of chi squared beyond which extensions do not lie on one line. */
const SURELY = 0.99;

function oneExtension(settings: readonly TorqueSetting[], shots: readonly TorqueShots[], D: number): Found {
  const measured = shots.map(({ turned }) => turned).filter((turned) => turned !== null);
  const torque =
    measured.length === 0
      ? USUAL_TORQUE
      : (2 * measured.reduce((sum, turned) => sum + turned, 0)) / measured.length;
  const relative = measured.length === 0 ? USUAL_TORQUE_ERROR : MEASURED_TORQUE_ERROR;
  const weights = settings.map(({ shiftSd, range }) => (range / shiftSd) ** 2);
  const weight = weights.reduce((sum, w) => sum + w, 0);
  const mean =
    settings.reduce((sum, { shift, range }, i) => sum + (at(weights, i) * shift) / range, 0) / weight;
  const u = 1 / (D + at(settings, 0).extension) - mean / (torque * D);
  const sdU = Math.hypot(1 / Math.sqrt(weight), mean * relative) / (torque * D);
  const place = {
    extension: si<'m'>(1 / u - D),
    sd: si<'m'>(sdU / u ** 2),
    interval: null,
    method: 'one extension' as const,
  };
  return { verdict: 'first move', place: u > 0 ? place : null, torque: si(torque), offLine: false };
}
