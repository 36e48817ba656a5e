import { si } from '../quantities/quantity.ts';
import type { Rig } from '../sight/rig.ts';
import type { SightScale } from '../sight/scale.ts';

/** What every calibration may change, in this order wherever a list of numbers stands for them. */
export const PARAMETERS = [
  'launch_speed',
  'drag_scale',
  'peep_height',
  'scale_ratio',
  'scale_offset',
] as const;
/**
 * What a calibration changes besides, after those above, where something speaks of it: `speed_per_degree` where the bow was shot
 * in the cold and in the warmth, `tape_ratio` where lines were pencilled on a strip.
 */
const FURTHER_PARAMETERS = ['speed_per_degree', 'tape_ratio'] as const;

type OwnParameter = (typeof PARAMETERS)[number];
type FurtherParameter = (typeof FURTHER_PARAMETERS)[number];
export type ParameterName = OwnParameter | FurtherParameter;

/** Those that change a flight, first in the order above; the scale's two enter a reading in closed form. */
export const FLOWN = [
  'launch_speed',
  'drag_scale',
  'peep_height',
] as const satisfies readonly ParameterName[];

export const PARAMETER_UNITS: Readonly<Record<ParameterName, string>> = {
  launch_speed: 'm/s',
  drag_scale: '1',
  peep_height: 'm',
  scale_ratio: '1',
  scale_offset: 'scale units',
  speed_per_degree: 'm/s/K',
  tape_ratio: '1',
};

/** What was known of a parameter before any arrow was shot at a mark. */
export interface Prior {
  readonly value: number;
  readonly sd: number;
  /**
   * For a prior so wide that it says nothing: the standard error that would be worth calling known. Else `sd` itself is the
   * yardstick.
   */
  readonly yardstick?: number;
}
/** A further parameter takes part where it has a prior. */
export type Priors = Readonly<Record<OwnParameter, Prior>> &
  Readonly<Partial<Record<FurtherParameter, Prior>>>;
export type ParameterValues = Readonly<Record<OwnParameter, number>> &
  Readonly<Partial<Record<FurtherParameter, number>>>;

/** The parameters that a calibration with these priors changes, in the order of its lists. */
export const parametersOf = (priors: Priors): readonly ParameterName[] => [
  ...PARAMETERS,
  ...FURTHER_PARAMETERS.filter((name) => priors[name] !== undefined),
];

/** @throws RangeError for a parameter that takes no part */
export function priorOf(priors: Priors, name: ParameterName): Prior {
  const prior = priors[name];
  if (prior === undefined) throw new RangeError(`no prior of ${name}`);
  return prior;
}

/** The value that a fit gave a parameter. @throws RangeError for a parameter that takes no part */
export function parameterIn(values: ParameterValues, name: ParameterName): number {
  const value = values[name];
  if (value === undefined) throw new RangeError(`no value of ${name}`);
  return value;
}

/**
 * Travel itself, in metres, serves where a sight has no scale: the same arithmetic, and `scale_ratio` its distance from the
 * eye.
 */
export const TRAVEL_SCALE: SightScale = { travelPerUnit: 1, direction: 1, atZero: 0 };

/**
 * The rig with other values of the parameters. `drag_scale` and `scale_ratio` multiply what the rig has, `scale_offset` is
 * added to its reading at the zero range. `scale_ratio` stands for travel per unit over the peep-to-pin distance: only their
 * ratio moves the arrow.
 */
export function withParameters(rig: Rig, values: ParameterValues): Rig {
  const { arrow } = rig.conditions;
  const scale = rig.scale ?? TRAVEL_SCALE;
  return {
    ...rig,
    conditions: { ...rig.conditions, arrow: { ...arrow, dragScale: arrow.dragScale * values.drag_scale } },
    launchSpeed: si(values.launch_speed),
    geometry: { ...rig.geometry, peepHeight: si(values.peep_height) },
    scale: {
      ...scale,
      travelPerUnit: scale.travelPerUnit * values.scale_ratio,
      atZero: scale.atZero + values.scale_offset,
    },
  };
}

/** The list a fit works on, as named values. */
export function namedValues(
  list: readonly number[],
  names: readonly ParameterName[] = PARAMETERS,
): ParameterValues {
  const at = (i: number): number => {
    const value = list[i];
    if (value === undefined) throw new RangeError(`expected ${names.length} parameters, got ${list.length}`);
    return value;
  };
  const further = FURTHER_PARAMETERS.filter((name) => names.includes(name));
  return {
    launch_speed: at(0),
    drag_scale: at(1),
    peep_height: at(2),
    scale_ratio: at(3),
    scale_offset: at(4),
    ...Object.fromEntries(further.map((name) => [name, at(names.indexOf(name))])),
  };
}

/** What a shot hangs on besides its rig. */
export interface Beside {
  /** How much faster the bow shoots for each kelvin of warmth, m/s per K. */
  readonly perDegree: number;
  /** Travel of a strip on the sight over travel of the pin. */
  readonly tapeRatio: number;
}

/** A bow that no warmth changes, and a strip on the part that carries the pin. */
const UNGEARED: Beside = { perDegree: 0, tapeRatio: 1 };

/** What the values say of it; where they say nothing, no measurement depends on it. */
export const besideOf = ({
  speed_per_degree: perDegree = UNGEARED.perDegree,
  tape_ratio: tapeRatio = UNGEARED.tapeRatio,
}: Partial<ParameterValues>): Beside => ({ perDegree, tapeRatio });
