import type { Arrow } from '../../arrow/arrow.ts';
import { USUAL_DAY } from '../../calibration/days.ts';
import type { CalibrationProblem } from '../../calibration/fit.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { BowGeometry } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';
import type { SetupFile } from '../schema/schema.ts';
import { assembleAir, assembleWind } from './assemble-air.ts';
import { assembleArrow } from './assemble-arrow.ts';
import { assembleDays, type DaySettings } from './assemble-days.ts';
import { assembleLaunch, powerStrokeOf } from './assemble-launch.ts';
import { measurementsOf } from './assemble-marks.ts';
import { priorsOf } from './assemble-priors.ts';
import { assembleScale, type ScaleKnowledge } from './assemble-scale.ts';
import { ratioPrior } from './assemble-strip.ts';
import { defaultOf } from './defaults.ts';
import { freeFallOf } from './free-fall-of.ts';
import { furtherPriors } from './further-priors.ts';
import { isLayerOpen, LAMINAR_DRAG } from './open-layer.ts';

/** A setup file as the domain's values: what to fly, and what to hold it to. */
export interface Assembly {
  readonly arrow: Arrow;
  /** From the measurements alone. */
  readonly rig: Rig;
  readonly scale: ScaleKnowledge;
  readonly problem: CalibrationProblem;
  /** What was different on the days that the file describes. */
  readonly days: DaySettings;
}

/**
 * The domain's values of a setup file that the reader has passed.
 *
 * @throws DomainError when values that are each allowed contradict each other (parts heavier than the arrow, a scale that
 *   runs the other way)
 */
export function assemble(setup: SetupFile): Assembly {
  const arrow = assembleArrow(setup.arrow);
  const conditions = conditionsOf(setup, arrow);
  const launch = assembleLaunch(setup, arrow, conditions.air);
  const bare: Rig = {
    conditions,
    launchSpeed: launch.value,
    geometry: geometryOf(setup, arrow.flying.balance),
    cant: setup.bow.cant ?? defaultOf('bow.cant'),
    zeroRange: setup.sight.zero_range ?? defaultOf('sight.zero_range'),
    zeroSlope: setup.sight.zero_slope ?? defaultOf('sight.zero_slope'),
    zeroedWith: null,
    scale: null,
    housingBelowPin: setup.sight.housing_below_pin ?? defaultOf('sight.housing_below_pin'),
  };
  const scale = assembleScale(bare, setup);
  const rig = { ...bare, scale: scale.scale };
  const settings = assembleDays(setup, arrow, rig, launch.sd);
  const ratio = ratioPrior(bare, setup);
  return {
    arrow,
    rig,
    scale,
    days: settings,
    problem: {
      rig,
      priors: { ...priorsOf(setup, rig, scale, launch.sd), ...furtherPriors(setup, settings, ratio) },
      measurements: measurementsOf(setup, rig, { settings, scale, ratio }),
      days: USUAL_DAY,
      ...(isLayerOpen(setup, arrow, rig) ? { otherDrag: LAMINAR_DRAG } : {}),
    },
  };
}

function conditionsOf(setup: SetupFile, arrow: Arrow): FlightConditions {
  const air = assembleAir(setup.air);
  return {
    arrow: arrow.flying,
    air,
    freeFall: freeFallOf(setup, air),
    wind: assembleWind(setup.wind, setup),
    slope: setup.slope ?? defaultOf('slope'),
    eyeHeight: setup.eye_height ?? defaultOf('eye_height'),
    place: setup.latitude === undefined ? null : { latitude: setup.latitude, azimuth: setup.azimuth ?? null },
  };
}

const geometryOf = ({ bow, sight }: SetupFile, balance: Metres): BowGeometry => ({
  peepHeight: bow.peep_height,
  peepToPin: sight.peep_to_pin,
  freeFlight: si(powerStrokeOf(bow) + balance),
  lean: sight.lean ?? defaultOf('sight.lean'),
  barAngle: sight.bar_angle ?? defaultOf('sight.bar_angle'),
});
