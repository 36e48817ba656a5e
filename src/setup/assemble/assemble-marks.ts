import { groupCentreSd } from '../../calibration/group.ts';
import type { Measurement, PencilMark, ShotMark } from '../../calibration/measurement.ts';
import { type Prior, type Priors, TRAVEL_SCALE } from '../../calibration/parameters.ts';
import { slopeAtHit } from '../../calibration/range-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { readingAt, type SightScale, travelAt } from '../../sight/scale.ts';
import type { DayEntry, MarkEntry, SetupFile } from '../schema/schema.ts';
import { archerSpread } from './archer-spread.ts';
import type { DaySettings } from './assemble-days.ts';
import { wayToChronograph } from './assemble-launch.ts';
import { pitchSd, type ScaleKnowledge } from './assemble-scale.ts';
import { defaultOf } from './defaults.ts';
import { dragSd } from './drag-sd.ts';
import { dropOf, pinShotsIn } from './pin-shots.ts';
import { shotsIn } from './shots.ts';
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
export const marksSetAside = (setup: SetupFile): readonly MarkEntry[] =>
  shotsIn(setup).marks.filter((entry) => isSet(entry) && heldOver(entry));

/** Whether it is known where the sight stood. */
const isSet = ({ reading, on_tape: line }: MarkEntry): boolean => reading !== undefined || line !== undefined;

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
    ...pairs.map((pair): Measurement => {
      const { near, far } = pair;
      const sdOf = (entry: MarkEntry): number =>
        Math.hypot(centreSd(entry, { spread }), rangingSd(entry, rig));
      return {
        kind: 'drop',
        aimedWith: near.range,
        range: far.range,
        drop: dropOf(pair),
        sd: si(Math.hypot(sdOf(far), (sdOf(near) * far.range) / near.range)),
        ...dated(far.date),
      };
    }),
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
function placePrior(setup: SetupFile, rig: Rig, { place }: ScaleKnowledge): Prior {
  const { sight } = setup;
  const stated = sight.scale && statedSd.readingAtZero(sight.scale);
  if (place === 'given' && stated !== undefined) return { value: 0, sd: stated };
  const travelPerUnit = rig.scale === null ? METRE_OF_TRAVEL : rig.scale.travelPerUnit;
  const shotAtZero = shotsIn(setup).marks.some(
    (entry) => isSet(entry) && Math.abs(entry.range - rig.zeroRange) < SAME_RANGE && !heldOver(entry),
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
