import type { Arrow } from '../arrow/arrow.ts';
import type { Air } from '../atmosphere/air.ts';
import type { CalibrationProblem } from '../calibration/fit.ts';
import type { FlightConditions } from '../flight/conditions.ts';
import { type Metres, type MetresPerSecond, si } from '../quantities/quantity.ts';
import type { BowGeometry } from '../sight/geometry.ts';
import type { Rig } from '../sight/rig.ts';
import { assembleAir, assembleWind } from './assemble-air.ts';
import { assembleArrow } from './assemble-arrow.ts';
import { measurementsOf, priorsOf } from './assemble-marks.ts';
import { assembleScale, type ScaleKnowledge } from './assemble-scale.ts';
import { GRIP_TO_DRAW_LENGTH } from './cross-checks.ts';
import { defaultOf } from './defaults.ts';
import type { BowSection, SetupFile } from './schema.ts';

/** A setup file as the domain's values: what to fly, and what to hold it to. */
export interface Assembly {
  readonly arrow: Arrow;
  /** From the measurements alone. */
  readonly rig: Rig;
  readonly scale: ScaleKnowledge;
  readonly problem: CalibrationProblem;
}

/**
 * The domain's values of a setup file that the reader has passed.
 *
 * @throws DomainError when values that are each allowed contradict each other (parts heavier than the arrow, a scale that runs the other way)
 */
export function assemble(setup: SetupFile): Assembly {
  const arrow = assembleArrow(setup.arrow);
  const conditions = conditionsOf(setup, arrow);
  const bare: Rig = {
    conditions,
    launchSpeed: launchSpeed(setup, arrow, conditions.air),
    geometry: geometryOf(setup, arrow.flying.balance),
    cant: setup.bow.cant ?? defaultOf('bow.cant'),
    zeroRange: setup.sight.zero_range ?? defaultOf('sight.zero_range'),
    scale: null,
    housingBelowPin: setup.sight.housing_below_pin ?? defaultOf('sight.housing_below_pin'),
  };
  const scale = assembleScale(bare, setup);
  const rig = { ...bare, scale: scale.scale };
  return {
    arrow,
    rig,
    scale,
    problem: { rig, priors: priorsOf(setup, rig, scale), measurements: measurementsOf(setup, rig) },
  };
}

function conditionsOf(setup: SetupFile, arrow: Arrow): FlightConditions {
  return {
    arrow: arrow.flying,
    air: assembleAir(setup.air),
    wind: assembleWind(setup.wind, setup),
    slope: setup.slope ?? defaultOf('slope'),
    eyeHeight: setup.eye_height ?? defaultOf('eye_height'),
    place: setup.latitude === undefined ? null : { latitude: setup.latitude, azimuth: setup.azimuth ?? null },
  };
}

const draw = (bow: BowSection): number => bow.draw_length ?? defaultOf('bow.draw_length');
const brace = (bow: BowSection): number => bow.brace_height ?? defaultOf('bow.brace_height');

const geometryOf = ({ bow, sight }: SetupFile, balance: Metres): BowGeometry => ({
  peepHeight: bow.peep_height,
  peepToPin: sight.peep_to_pin,
  freeFlight: si(draw(bow) - GRIP_TO_DRAW_LENGTH - brace(bow) + balance),
  lean: sight.lean ?? defaultOf('sight.lean'),
});

/**
 * Speed at the start of free flight: a chronograph's reading carried back by drag, v₀ = v exp(k s), over the way s from there to
 * the chronograph; at the string's rest the balance point is (balance − brace height) ahead of the grip.
 */
export function launchSpeed(
  { launch, bow }: Pick<SetupFile, 'launch' | 'bow'>,
  { flying }: Arrow,
  air: Air,
): MetresPerSecond {
  if (launch.measured_at === undefined) return launch.speed;
  const way = Math.max(0, launch.measured_at + brace(bow) - flying.balance);
  const reynolds = (air.density * launch.speed * flying.diameter) / air.viscosity;
  const k =
    (air.density * flying.drag.at(reynolds) * (Math.PI / 4) * flying.diameter ** 2) / (2 * flying.mass);
  return si(launch.speed * Math.exp(k * way));
}
