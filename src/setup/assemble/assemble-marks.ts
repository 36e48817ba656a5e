import { groupCentreSd } from '../../calibration/group.ts';
import type { Measurement, ShotMark } from '../../calibration/measurement.ts';
import type { Prior, Priors } from '../../calibration/parameters.ts';
import { slopeAtHit } from '../../calibration/range-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import type { SightScale } from '../../sight/scale.ts';
import type { MarkEntry, SetupFile } from '../schema/schema.ts';
import { archerSpread } from './archer-spread.ts';
import { pitchSd, type ScaleKnowledge } from './assemble-scale.ts';
import { defaultOf } from './defaults.ts';
import { dragSd } from './drag-sd.ts';
import { statedSd } from './stated-sd.ts';

/**
 * Wider than any error of a sight's scale, so that the marks alone decide. The yardsticks are a pitch to 10 % and a
 * place to 2 mm.
 */
const UNKNOWN_PITCH: Prior = { value: 1, sd: 10, yardstick: 0.2 }; // of the first value
const UNKNOWN_PLACE = { sd: 0.5, yardstick: 0.004 }; // m of travel
/** Without a scale the place of its zero counts in metres of travel. */
const METRE_OF_TRAVEL = 1;
/** A mark this near to the zero range is the zero, m. */
const SAME_RANGE = 0.5;
/** A bow held further over than this is turned on purpose: such marks serve the sideways fit only, rad. */
const HELD_OVER = 0.52;

/** How the bow was held for a mark: upright unless the file says otherwise. */
const cantOf = ({ cant }: MarkEntry): Radians => (cant === undefined ? si(0) : cant);
const heldOver = (entry: MarkEntry): boolean => Math.abs(cantOf(entry)) > HELD_OVER;
/** Where a group's centre was: on the mark aimed at unless the file says otherwise. */
const heightOf = ({ vertical }: MarkEntry): Metres => (vertical === undefined ? si(0) : vertical);

/** Marks that take no part in the fit of heights, because of how the bow was held. */
export const marksSetAside = ({ marks = [] }: SetupFile): readonly MarkEntry[] =>
  marks.filter((entry) => entry.reading !== undefined && heldOver(entry));

/** Whether the pin that the scale counts from was held: what a lower one shows, `pins` reads from its own place. */
const isTopPin = ({ pin }: MarkEntry): boolean => pin === undefined || pin === 1;

/** What the file says was measured, each with its standard uncertainty. */
export function measurementsOf(setup: SetupFile, rig: Rig): readonly Measurement[] {
  const spread = archerSpread({ setup });
  const marks = (setup.marks ?? [])
    .filter(isTopPin)
    .flatMap((entry) => markOf(entry, { setup, rig, spread }));
  const speeds = (setup.speeds ?? []).map(
    (entry): Measurement => ({
      kind: 'speed',
      range: entry.range,
      speed: entry.speed,
      sd: statedSd.speedDownrange(entry) ?? defaultOf('launch.speed_sd'),
      day: entry.date ?? null,
    }),
  );
  const drops = (setup.drops ?? []).map(
    (entry): Measurement => ({
      kind: 'drop',
      aimedWith: entry.aimed_with,
      range: entry.range,
      drop: entry.drop,
      sd: statedSd.drop(entry) ?? usualCentreSd(entry.range),
      day: entry.date ?? null,
    }),
  );
  return [...marks, ...speeds, ...drops];
}

/** What every mark of a file needs beside its own entry. */
interface MarkContext {
  readonly setup: SetupFile;
  readonly rig: Rig;
  /** Standard deviation of one of the archer's arrows per metre of range. */
  readonly spread: number;
}

function markOf(entry: MarkEntry, context: MarkContext): readonly ShotMark[] {
  const { range, reading, date } = entry;
  const { scale } = context.rig;
  if (reading === undefined || scale === null || heldOver(entry)) return [];
  const sd = markSd(entry, scale, context);
  return [
    {
      kind: 'mark',
      range,
      reading,
      vertical: heightOf(entry),
      sd,
      cant: cantOf(entry),
      day: date ?? null,
    },
  ];
}

/** On the target: the group's centre, how finely the scale was read, and how well the range was known. */
function markSd(
  entry: MarkEntry,
  { travelPerUnit }: SightScale,
  { setup, rig, spread }: MarkContext,
): Metres {
  const perUnit = (travelPerUnit * entry.range) / rig.geometry.peepToPin;
  const ranging = slopeAtHit(rig, entry.range) * (statedSd.markRange(entry) ?? usualRangeSd(entry.range));
  const readingSd = statedSd.markReading(entry);
  // A reading's own uncertainty without a group stands for the group as well.
  const standsForGroup = readingSd !== undefined && entry.arrows === undefined && entry.group === undefined;
  const group = statedSd.markHeight(entry) ?? (standsForGroup ? 0 : centreSdOf(entry, spread));
  return si(Math.hypot(group, perUnit * (readingSd ?? readingResolution(setup)), ranging));
}

/**
 * Standard uncertainty on the target of a mark that is yet to be shot with a group of so many arrows, as that of the marks of the
 * file: by how the archer shoots, how finely the sight is read and how well ranges are known.
 */
export function plannedMarkSd(setup: SetupFile, rig: Rig, arrows: number): (range: Metres) => Metres {
  const { scale } = rig;
  const spread = archerSpread({ setup });
  return (range) =>
    scale === null
      ? centreSdOf({ range, arrows: si(arrows) }, spread)
      : markSd({ range, arrows: si(arrows) }, scale, { setup, rig, spread });
}

/** Half of the last digit that the file's readings are written to. */
const readingResolution = ({ readingStep }: SetupFile): number =>
  readingStep === undefined ? 0 : readingStep / 2;

/** A rangefinder's; a range too near for one is taped or paced, to a twentieth of it. */
const usualRangeSd = (range: Metres): number =>
  Math.min(defaultOf('marks.range_sd'), NEAR_RANGE_SHARE * range);
const NEAR_RANGE_SHARE = 0.05;

/** Standard uncertainty of a group's centre in one direction, from its size and count and how the archer shoots. */
export const centreSdOf = (
  { range, arrows, group }: Pick<MarkEntry, 'range' | 'arrows' | 'group'>,
  spread: number,
): Metres =>
  groupCentreSd({
    range,
    arrows: arrows ?? defaultOf('marks.arrows'),
    group: group ?? null,
    arrowSdPerRange: spread,
  });

const usualCentreSd = (range: Metres): Metres => centreSdOf({ range }, defaultOf('marks.arrow_spread'));

/** What is known of every parameter before the marks. */
export function priorsOf(
  setup: SetupFile,
  rig: Rig,
  knowledge: ScaleKnowledge,
  launchSpeedSd: number,
): Priors {
  const { bow, arrow, sight } = setup;
  return {
    launch_speed: { value: rig.launchSpeed, sd: launchSpeedSd },
    drag_scale: { value: 1, sd: dragSd(arrow) },
    peep_height: { value: bow.peep_height, sd: statedSd.peepHeight(bow) ?? defaultOf('bow.peep_height_sd') },
    scale_ratio:
      knowledge.pitch === 'from marks'
        ? UNKNOWN_PITCH
        : {
            value: 1,
            sd: Math.hypot(
              (statedSd.peepToPin(sight) ?? defaultOf('sight.peep_to_pin_sd')) / sight.peep_to_pin,
              sight.scale === undefined ? 0 : pitchSd(sight.scale),
            ),
          },
    scale_offset: placePrior(setup, rig, knowledge),
  };
}

/**
 * As stated in the file. Otherwise the zero counts as a group of the usual size, unless the marks contain that group
 * themselves or the reading at the zero is unknown.
 */
function placePrior({ marks = [], sight }: SetupFile, rig: Rig, { place }: ScaleKnowledge): Prior {
  const stated = sight.scale && statedSd.readingAtZero(sight.scale);
  if (place === 'given' && stated !== undefined) return { value: 0, sd: stated };
  const travelPerUnit = rig.scale === null ? METRE_OF_TRAVEL : rig.scale.travelPerUnit;
  const shotAtZero = marks.some(
    (entry) =>
      entry.reading !== undefined && Math.abs(entry.range - rig.zeroRange) < SAME_RANGE && !heldOver(entry),
  );
  if (place !== 'from marks' && !shotAtZero)
    return {
      value: 0,
      sd: (usualCentreSd(rig.zeroRange) * rig.geometry.peepToPin) / rig.zeroRange / travelPerUnit,
    };
  return {
    value: 0,
    sd: UNKNOWN_PLACE.sd / travelPerUnit,
    yardstick: UNKNOWN_PLACE.yardstick / travelPerUnit,
  };
}
