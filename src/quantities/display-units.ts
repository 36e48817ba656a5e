import type { DisplayUnit } from './format.ts';

/** Metric as archers write it, with grains and pounds kept, or SI throughout. */
export type UnitSystem = 'imperial' | 'metric' | 'si';

/** Which unit each kind of number is shown in. */
export interface DisplayUnits {
  readonly range: DisplayUnit;
  /** On the target and on the tape: misses, drops, drift. */
  readonly smallLength: DisplayUnit;
  /** On the bow and the arrow: peep height, shaft length, balance point. */
  readonly bowLength: DisplayUnit;
  readonly height: DisplayUnit;
  readonly mass: DisplayUnit;
  readonly massPerLength: DisplayUnit;
  readonly speed: DisplayUnit;
  readonly windSpeed: DisplayUnit;
  readonly speedPerDegree: DisplayUnit;
  readonly angle: DisplayUnit;
  readonly temperature: DisplayUnit;
  readonly pressure: DisplayUnit;
  readonly density: DisplayUnit;
  readonly force: DisplayUnit;
  readonly energy: DisplayUnit;
  readonly momentum: DisplayUnit;
  readonly time: DisplayUnit;
  readonly spin: DisplayUnit;
  readonly spinPerLength: DisplayUnit;
}

const IMPERIAL = {
  range: 'yd',
  smallLength: 'in',
  bowLength: 'in',
  height: 'ft',
  mass: 'gr',
  massPerLength: 'gpi',
  speed: 'fps',
  windSpeed: 'mph',
  speedPerDegree: 'fps/degF',
  angle: 'deg',
  temperature: 'degF',
  pressure: 'inHg',
  density: 'lb/ft3',
  force: 'lbf',
  energy: 'ftlbf',
  momentum: 'lbf s',
  time: 's',
  spin: 'rpm',
  spinPerLength: 'rev/yd',
} as const satisfies DisplayUnits;

const METRIC = {
  range: 'm',
  smallLength: 'mm',
  bowLength: 'mm',
  height: 'm',
  mass: 'gr',
  massPerLength: 'gpi',
  speed: 'm/s',
  windSpeed: 'm/s',
  speedPerDegree: 'm/s/K',
  angle: 'deg',
  temperature: 'degC',
  pressure: 'hPa',
  density: 'kg/m3',
  force: 'lbf',
  energy: 'J',
  momentum: 'kg m/s',
  time: 's',
  spin: 'rpm',
  spinPerLength: 'rad/m',
} as const satisfies DisplayUnits;

/** The units of one system by purpose. */
export const displayUnits = (system: UnitSystem): DisplayUnits => SYSTEMS[system];

const SYSTEMS: Readonly<Record<UnitSystem, DisplayUnits>> = {
  imperial: IMPERIAL,
  metric: METRIC,
  si: { ...METRIC, mass: 'g', massPerLength: 'g/m', force: 'N' },
};
