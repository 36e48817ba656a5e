import { si } from '../quantities/quantity.ts';
import type { Rig } from '../sight/rig.ts';
import type { SightScale } from '../sight/scale.ts';

/** What a calibration may change, in this order wherever a list of numbers stands for them. */
export const PARAMETERS = [
  'launch_speed',
  'drag_scale',
  'peep_height',
  'scale_ratio',
  'scale_offset',
] as const;
export type ParameterName = (typeof PARAMETERS)[number];

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
export type Priors = Readonly<Record<ParameterName, Prior>>;
export type ParameterValues = Readonly<Record<ParameterName, number>>;

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
export function namedValues(list: readonly number[]): ParameterValues {
  const at = (i: number): number => {
    const value = list[i];
    if (value === undefined)
      throw new RangeError(`expected ${PARAMETERS.length} parameters, got ${list.length}`);
    return value;
  };
  return {
    launch_speed: at(0),
    drag_scale: at(1),
    peep_height: at(2),
    scale_ratio: at(3),
    scale_offset: at(4),
  };
}
