import { groupCentreSd } from '../../calibration/group.ts';
import type { Measurement, PencilMark, ShotMark } from '../../calibration/measurement.ts';
import { type Prior, TRAVEL_SCALE } from '../../calibration/parameters.ts';
import { slopeAtHit } from '../../calibration/range-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { readingAt, type SightScale, travelAt } from '../../sight/scale.ts';
import type { DayEntry, MarkEntry, SetupFile } from '../schema/schema.ts';
import { archerSpread } from './archer-spread.ts';
import type { DaySettings } from './assemble-days.ts';
import { wayToChronograph } from './assemble-launch.ts';
import type { ScaleKnowledge } from './assemble-scale.ts';
import { defaultOf } from './defaults.ts';
import { dropOf, pinShotsIn } from './pin-shots.ts';
import { shotsIn } from './shots.ts';
import { statedSd } from './stated-sd.ts';

/** A bow held further over than this is turned on purpose: such marks serve the sideways fit only, rad. */
const HELD_OVER = 0.52;

/** How the bow was held for a mark: upright unless the file says otherwise. */
const cantOf = ({ cant }: MarkEntry): Radians => (cant === undefined ? si(0) : cant);
export const heldOver = (entry: MarkEntry): boolean => Math.abs(cantOf(entry)) > HELD_OVER;
/** Where a group's centre was: on the mark aimed at unless the file says otherwise. */
const heightOf = ({ vertical }: MarkEntry): Metres => (vertical === undefined ? si(0) : vertical);

/** Marks that take no part in the fit of heights, because of how the bow was held. */
export const marksSetAside = (setup: SetupFile): readonly MarkEntry[] =>
  shotsIn(setup).marks.filter((entry) => isSet(entry) && heldOver(entry));

/** Whether it is known where the sight stood. */
export const isSet = ({ reading, on_tape: line }: MarkEntry): boolean =>
  reading !== undefined || line !== undefined;

/** Whether the pin that the scale counts from was held: what a lower one shows, `pins` reads from its own place. */
const isTopPin = ({ pin }: MarkEntry): boolean => pin === undefined || pin === 1;

/** What the file says was measured, each with its standard uncertainty. */
export function measurementsOf(
  setup: SetupFile,
  rig: Rig,
  { settings, scale, ratio }: ShotWith,
): readonly Measurement[] {
  const spread = archerSpread({ setup });
  const shots = shotsIn(setup);
  const dated = (date: string | undefined) => datedIn(settings, date);
  const marks = shots.marks
    .filter(isTopPin)
    .flatMap((entry): readonly Measurement[] => [
      ...markOf(entry, dated(entry.date), { setup, rig, spread }),
      ...pencilOf(entry, dated(entry.date), { setup, rig, spread, scale, ratio }),
    ]);
  const speeds = shots.speeds.map(
    (entry): Measurement => ({
      kind: 'speed',
      range: entry.range,
      speed: entry.speed,
      sd: statedSd.speedDownrange(entry) ?? defaultOf('launch.speed_sd'),
      ...dated(entry.date),
    }),
  );
  const drops = shots.drops.map(
    (entry): Measurement => ({
      kind: 'drop',
      aimedWith: entry.aimed_with,
      range: entry.range,
      drop: entry.drop,
      sd: statedSd.drop(entry) ?? usualCentreSd(entry.range),
      ...dated(entry.date),
    }),
  );
  const pins = pinMeasurements(setup, dated, { rig, spread });
  const launches = (setup.days ?? []).flatMap((day) => launchOf(day, setup, rig, dated(day.date)));
  return [...marks, ...speeds, ...drops, ...pins, ...launches];
}

/** What marks of pins say of the flight: a lower pin of a slider is the top one that much lower, two ranges of one pin a drop. */
function pinMeasurements(
  setup: SetupFile,
  dated: (date: string | undefined) => Dated,
  { rig, spread }: { readonly rig: Rig; readonly spread: number },
): readonly Measurement[] {
  const { pairs, lower } = pinShotsIn(setup);
  const { scale } = rig;
  return [
    ...lower.flatMap(({ entry, below }) =>
      scale === null || entry.reading === undefined
        ? []
        : markOf(
            { ...entry, reading: si(readingAt(scale, travelAt(scale, entry.reading) + below)) },
            dated(entry.date),
            { setup, rig, spread },
          ),
    ),
    ...pairs.map(
      (pair): Measurement => ({
        ...dropOf(pair, (entry) => Math.hypot(centreSd(entry, { spread }), rangingSd(entry, rig))),
        ...dated(pair.far.date),
      }),
    ),
  ];
}

/** What measurements hang on beside the rig. */
interface ShotWith {
  readonly settings: DaySettings;
  readonly scale: ScaleKnowledge;
  /** First value of the travel of a strip over that of the pin; null where no line was pencilled. */
  readonly ratio: Prior | null;
}

type Dated = Pick<Measurement, 'day' | 'setting'>;

function datedIn(settings: DaySettings, date: string | undefined): Dated {
  const setting = date === undefined ? undefined : settings.get(date);
  return { day: date ?? null, ...(setting === undefined ? {} : { setting }) };
}

/** A day's own chronograph at the bow: a speed in that day's air, with that day's arrow. */
function launchOf(day: DayEntry, { bow }: SetupFile, rig: Rig, dated: Dated): readonly Measurement[] {
  const { speed, measured_at: measuredAt } = day;
  if (speed === undefined) return [];
  const arrow = dated.setting?.arrow ?? null;
  const start = arrow === null ? rig.geometry.freeFlight : arrow.freeFlight;
  const { balance } = arrow === null ? rig.conditions.arrow : arrow.flying;
  const way = measuredAt === undefined ? 0 : wayToChronograph(bow, balance, measuredAt);
  const sd = statedSd.daySpeed(day) ?? defaultOf('launch.speed_sd');
  return [{ kind: 'speed', isAtBow: true, range: si(start + way), speed, sd, ...dated }];
}

/** What every mark of a file needs beside its own entry. */
interface MarkContext {
  readonly setup: SetupFile;
  readonly rig: Rig;
  /** Standard deviation of one of the archer's arrows per metre of range. */
  readonly spread: number;
}

function markOf(entry: MarkEntry, dated: Dated, context: MarkContext): readonly ShotMark[] {
  const { range, reading } = entry;
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
      ...dated,
    },
  ];
}

function pencilOf(
  entry: MarkEntry,
  dated: Dated,
  context: MarkContext & Pick<ShotWith, 'scale' | 'ratio'>,
): readonly PencilMark[] {
  const { range, on_tape: onTape } = entry;
  const { rig, ratio, scale } = context;
  if (onTape === undefined || ratio === null || heldOver(entry)) return [];
  const { peepToPin } = rig.geometry;
  const drawn = (statedSd.onTape(entry) ?? defaultOf('marks.on_tape_sd')) / ratio.value;
  return [
    {
      kind: 'pencil',
      range,
      onTape,
      // With a scale whose place the marks are to tell, the line of the zero range is where they tell it.
      lineAt: rig.scale !== null && scale.place !== 'given' ? null : (rig.scale ?? TRAVEL_SCALE).atZero,
      vertical: heightOf(entry),
      sd: si(Math.hypot(centreSd(entry, context), (drawn * range) / peepToPin, rangingSd(entry, rig))),
      cant: cantOf(entry),
      ...dated,
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
  const ranging = rangingSd(entry, rig);
  const readingSd = statedSd.markReading(entry);
  // A reading's own uncertainty without a group stands for the group as well.
  const standsForGroup = readingSd !== undefined && entry.arrows === undefined && entry.group === undefined;
  const group = statedSd.markHeight(entry) ?? (standsForGroup ? 0 : centreSdOf(entry, spread));
  return si(Math.hypot(group, perUnit * (readingSd ?? readingResolution(setup)), ranging));
}

const centreSd = (entry: MarkEntry, { spread }: Pick<MarkContext, 'spread'>): number =>
  statedSd.markHeight(entry) ?? centreSdOf(entry, spread);

/** What a wrong range does to the height of a mark. */
const rangingSd = (entry: MarkEntry, rig: Rig): number =>
  slopeAtHit(rig, entry.range) * (statedSd.markRange(entry) ?? usualRangeSd(entry.range));

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

export const usualCentreSd = (range: Metres): Metres =>
  centreSdOf({ range }, defaultOf('marks.arrow_spread'));
