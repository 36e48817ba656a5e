import type { Arrow } from '../../arrow/arrow.ts';
import { dragAt } from '../../arrow/drag/drag-at.ts';
import { referenceArea } from '../../arrow/reference-area.ts';
import { fitBowEnergy } from '../../bow/energy.ts';
import type { DayArrow, DaySetting } from '../../calibration/day-setting.ts';
import { at } from '../../numerics/at.ts';
import { type Kelvin, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import type { AirSection, BuildEntry, DayEntry, SetupFile } from '../schema/schema.ts';
import { assembleAir, assembleWind } from './assemble-air.ts';
import { assembleLaunch, otherShots, virtualMassPrior } from './assemble-launch.ts';
import { dragSd } from './drag-sd.ts';
import { freeFallOf } from './free-fall-of.ts';
import { mergeBuild } from './merge-build.ts';
import { massSd, ownOf, variantArrow } from './variant-arrow.ts';

/** The setting of every day by its date. */
export type DaySettings = ReadonlyMap<string, DaySetting>;

/**
 * The days of a file, each with its own air, wind, bow and arrow where it names them, and the file's where it does not.
 *
 * @param rig of the file's own arrow in the file's own air, in which its launch speed was measured
 */
export function assembleDays(setup: SetupFile, arrow: Arrow, rig: Rig, launchSd: number): DaySettings {
  const { days = [] } = setup;
  return new Map(
    days.map((day) => {
      const section = airOf(setup.air, day);
      const air = assembleAir(section);
      const setting: DaySetting = {
        air,
        wind: day.wind === undefined ? rig.conditions.wind : assembleWind(day.wind, setup),
        freeFall: freeFallOf({ ...setup, ...(section === undefined ? {} : { air: section }) }, air),
        cant: day.cant ?? rig.cant,
        warmer: air.temperature - rig.conditions.air.temperature,
        arrow: dayArrow(setup, day, arrow, rig, launchSd),
      };
      return [day.date, setting];
    }),
  );
}

/** A temperature alone leaves the rest of the file's air as it is. */
function airOf(own: AirSection | undefined, { air = own, temperature }: DayEntry): AirSection | undefined {
  return temperature === undefined ? air : { ...air, temperature };
}

function dayArrow(
  setup: SetupFile,
  { build: name }: DayEntry,
  arrow: Arrow,
  rig: Rig,
  launchSd: number,
): DayArrow | null {
  const build = (setup.builds ?? []).find((each) => each.name === name);
  if (build === undefined) return null;
  const merged = mergeBuild(setup, build);
  const own = ownOf(build);
  const changed = variantArrow(setup.arrow, arrow, merged.arrow, own);
  const speed = speedOf(setup, build, { arrow, changed, rig, launchSd });
  return {
    flying: changed.flying,
    freeFlight: si(rig.geometry.freeFlight - arrow.flying.balance + changed.flying.balance),
    speedRatio: speed.ratio,
    speedRatioSd: speed.sd,
    dragSd: own.drag === true ? dragSd(merged.arrow) : furtherDragSd(setup, arrow, changed, rig),
  };
}

interface Launched {
  readonly arrow: Arrow;
  readonly changed: Arrow;
  readonly rig: Rig;
  /** Of the rig's launch speed, m/s. */
  readonly launchSd: number;
}

/** Of the build's launch speed to the base's, as chronographed or by the energy of the bow, v = √(2E/(m + K)). */
function speedOf(setup: SetupFile, build: BuildEntry, { arrow, changed, rig, launchSd }: Launched) {
  const { launchSpeed, conditions } = rig;
  if (build.launch?.speed !== undefined) {
    const own = assembleLaunch(mergeBuild(setup, build), changed, conditions.air);
    return { ratio: own.value / launchSpeed, sd: Math.hypot(own.sd / own.value, launchSd / launchSpeed) };
  }
  const shot = { mass: arrow.flying.mass, speed: launchSpeed, speedSd: si<'m/s'>(launchSd) };
  const bow = fitBowEnergy([shot, ...otherShots(setup.bow)], virtualMassPrior(setup.bow));
  const [m, other] = [arrow.flying.mass + bow.virtualMass, changed.flying.mass + bow.virtualMass];
  const byVirtualMass =
    (bow.virtualMass * (1 / m - 1 / other) * Math.sqrt(at(at(bow.logCovariance, 1), 1))) / 2;
  const own = mergeBuild(setup, build).arrow;
  const byMass = massSd(own, ownOf(build), changed.flying.mass === arrow.flying.mass) / (2 * other);
  return { ratio: Math.sqrt(m / other), sd: Math.hypot(byVirtualMass, byMass) };
}

/** The build-up's error of what the two arrows do not have in common, over the drag of the changed one. */
function furtherDragSd(
  setup: SetupFile,
  arrow: Arrow,
  changed: Arrow,
  { conditions, launchSpeed }: Rig,
): number {
  const areaOf = ({ flying }: Arrow): number =>
    dragAt(flying, conditions.air, launchSpeed) * referenceArea(flying.diameter);
  const [before, after] = [areaOf(arrow), areaOf(changed)];
  return (dragSd(setup.arrow) * Math.abs(after - before)) / after;
}

/** How much warmer or colder than the launch speed's own air the days are, at most, K. */
export const temperatureSpan = (settings: DaySettings): Kelvin =>
  si(Math.max(0, ...[...settings.values()].map(({ warmer }) => Math.abs(warmer))));
