import { tried } from '../../calibration/agreement.ts';
import { type BowChange, bowChange } from '../../calibration/bow-change.ts';
import {
  type DayEstimate,
  dayEstimates,
  daysAgree,
  EVENINGS_APART,
  hiddenByEvenings,
} from '../../calibration/day-estimates.ts';
import { type Finding, findings } from '../../calibration/diagnose.ts';
import type { Calibration, Residual } from '../../calibration/fit.ts';
import {
  type MarkResidual,
  markResiduals,
  type PencilResidual,
  pencilResiduals,
} from '../../calibration/mark-residual.ts';
import { markUncertainty } from '../../calibration/mark-uncertainty.ts';
import { type NextRange, nextRange } from '../../calibration/next-range.ts';
import type { ParameterName } from '../../calibration/parameters.ts';
import type { ParameterEstimate } from '../../calibration/verdict.ts';
import { at } from '../../numerics/at.ts';
import {
  type Kelvin,
  type KilogramsPerCubicMetre,
  type Metres,
  type MetresPerSecond,
  si,
} from '../../quantities/quantity.ts';
import { plannedMarkSd } from '../../setup/assemble/assemble-marks.ts';
import { arrowsLeftOut, type LeftOut, shotsIn } from '../../setup/assemble/shots.ts';
import type { OpenSetup } from '../../setup/open.ts';
import type { SetupFile } from '../../setup/schema/schema.ts';
import { marksFor } from '../../sight/marks.ts';
import { isToldSpread } from '../told-spread.ts';
import { shootable } from './shootable.ts';

/** The group to be shot next is thought of as this many arrows. */
export const NEXT_ARROWS = 6;

/** A parameter of the fit and what there is to say of it. */
export interface ParameterFound extends ParameterEstimate {
  /** Whether it means anything for this sight: without a scale none has a reading. */
  readonly isShown: boolean;
  /** Whether anything was known of it before the marks. */
  readonly wasKnown: boolean;
}

/**
 * Standard uncertainty of the mark of a range on the target, now and after the next group; null when it is too wide to tell
 * anything.
 */
interface Sureness {
  readonly range: Metres;
  readonly now: Metres | null;
  readonly after: Metres | null;
}

/** The next group, and the root mean square of the marks' uncertainties on the target. */
interface NextGroup extends Pick<NextRange, 'range' | 'rmsNow' | 'rmsAfter'> {
  /** The ranges to begin with where nothing was shot yet; else none. */
  readonly begin: readonly Metres[];
  readonly isTold: { readonly now: boolean; readonly after: boolean };
}

/** Two parameters that move together. */
interface Tie {
  readonly one: ParameterName;
  readonly other: ParameterName;
  readonly correlation: number;
}

/** What the marks of a setup decide, what they do not, and where to shoot next. */
export interface FitFindings {
  /** What stands out, the gravest first. */
  readonly symptoms: readonly Finding[];
  /** Whether marks were shot of which none can be read because the scale is not known. */
  readonly isUnreadable: boolean;
  /** How many measurements the fit rests on. */
  readonly measurements: number;
  readonly parameters: readonly ParameterFound[];
  readonly marks: readonly MarkResidual[];
  readonly pencil: readonly PencilResidual[];
  /** Chronograph readings and drops. */
  readonly others: readonly Residual[];
  /** The closest tie between two parameters; null when none is close. */
  readonly tie: Tie | null;
  /** Of the ranges that the tape is to serve, nearest first. */
  readonly sureness: readonly Sureness[];
  readonly next: NextGroup;
  /** Every day that the file names. */
  readonly days: readonly DayFound[];
  /** Chance that days of one bow differ more than these; null for fewer than three. */
  readonly daysAgree: number | null;
  /** What has changed on the bow between the days; null where nothing is likely to have. */
  readonly change: BowChange | null;
  /** Arrows that belong to no group. */
  readonly wild: readonly LeftOut[];
  /** What two evenings could hide in marks that name no day; null where they all do, or nothing could be hidden. */
  readonly hidden: HiddenByEvenings | null;
}

/** A day, and what it was shot in. */
interface DayFound extends DayEstimate {
  readonly temperature: Kelvin;
  readonly density: KilogramsPerCubicMetre;
  /** The arrow of the day; null for the file's own. */
  readonly build: string | null;
}

/** The farthest range that the tape is to serve. */
export const farthestOf = ({ sureness }: Pick<FitFindings, 'sureness'>): Metres =>
  at(sureness, sureness.length - 1).range;

/** How far off the mark of the farthest range could be, on the target. */
interface HiddenByEvenings {
  readonly range: Metres;
  readonly shift: Metres;
  /** What the two evenings are taken to differ by. */
  readonly apart: MetresPerSecond;
}

export function fitFindings(opened: OpenSetup, ranges: readonly Metres[], whole: Metres): FitFindings {
  const { setup, assembly, calibration, disagreement, uncalibrated } = opened;
  // A day on which the bow was another may be all that contradicts: it has to be in what the days are told by.
  const isWhole = calibration.residuals.length === assembly.problem.measurements.length;
  const all = isWhole ? calibration : (tried(assembly.problem)?.calibration ?? calibration);
  // Without a scale nothing is read at the zero range.
  const isShown = (name: ParameterName): boolean => assembly.rig.scale !== null || name !== 'scale_offset';
  const { begin, ...where } = shootable(opened, ranges, whole);
  const next = nextRange(calibration, ranges, {
    sdAt: plannedMarkSd(setup, calibration.rig, NEXT_ARROWS),
    ...where,
  });
  return {
    symptoms: findings(calibration, disagreement),
    isUnreadable:
      assembly.scale.scale === null && shotsIn(setup).marks.some(({ reading }) => reading !== undefined),
    measurements: calibration.residuals.length,
    parameters: calibration.parameters.map((estimate) => ({
      ...estimate,
      isShown: isShown(estimate.name),
      wasKnown: estimate.priorSd <= WIDE_OPEN[estimate.name],
    })),
    marks: markResiduals(calibration),
    pencil: pencilResiduals(calibration),
    others: calibration.residuals.filter(({ measurement: { kind } }) => kind === 'speed' || kind === 'drop'),
    tie: closestTie(calibration, isShown),
    sureness: ranges.map((range, i) => ({
      range,
      now: toldSpread(at(next.now, i)),
      after: toldSpread(at(next.after, i)),
    })),
    next: {
      range: next.range,
      begin,
      rmsNow: next.rmsNow,
      rmsAfter: next.rmsAfter,
      isTold: { now: isToldSpread(next.rmsNow), after: isToldSpread(next.rmsAfter) },
    },
    days: daysFound(setup, all),
    daysAgree: daysAgree(all),
    change: bowChange(all),
    wild: arrowsLeftOut(uncalibrated ? {} : setup),
    hidden: hiddenIn(calibration, ranges),
  };
}

function daysFound({ days = [] }: SetupFile, calibration: Calibration): readonly DayFound[] {
  const { measurements, rig } = calibration.problem;
  return dayEstimates(calibration).map((estimate) => {
    const shot = measurements.find(({ day }) => day === estimate.day);
    const { air } = shot?.setting ?? rig.conditions;
    const build = days.find(({ date }) => date === estimate.day)?.build ?? null;
    return { ...estimate, temperature: air.temperature, density: air.density, build };
  });
}

function hiddenIn(calibration: Calibration, ranges: readonly Metres[]): HiddenByEvenings | null {
  const range = si<'m'>(Math.max(...ranges));
  const [mark] = markUncertainty(calibration, marksFor(calibration.rig, [range]));
  const shift = mark === undefined ? 0 : hiddenByEvenings(calibration, mark);
  if (!(shift > 0) || !isToldSpread(si(shift))) return null;
  return { range, shift: si(shift), apart: si(EVENINGS_APART * calibration.problem.days.speed) };
}

/** A prior wider than this says nothing, in the unit of its parameter. */
const WIDE_OPEN: Readonly<Record<ParameterName, number>> = {
  launch_speed: 100,
  drag_scale: 5,
  peep_height: 1,
  scale_ratio: 5,
  scale_offset: 50,
  speed_per_degree: 5,
  tape_ratio: 0.3,
};

const toldSpread = (sd: Metres): Metres | null => (isToldSpread(sd) ? sd : null);

/** Two parameters correlated less than this are hardly tied. */
const CLOSE_TIE = 0.5;

/** @param isShown of parameters that mean anything for this sight */
function closestTie(
  { correlations, names }: Calibration,
  isShown: (name: ParameterName) => boolean,
): Tie | null {
  const ties = names.flatMap((one, i) =>
    names.slice(i + 1).map((other, k) => ({
      one,
      other,
      correlation: at(at(correlations, i), i + 1 + k),
    })),
  );
  const closest = at(
    ties
      .filter(({ one, other }) => isShown(one) && isShown(other))
      .toSorted((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation)),
    0,
  );
  return Math.abs(closest.correlation) < CLOSE_TIE ? null : closest;
}
