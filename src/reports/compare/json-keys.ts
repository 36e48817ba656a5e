import type { Fact, RowValue } from '../../advice/builds/build-readings.ts';

/** What JSON calls the numbers of a build: SI, units in the keys. */
export const FACT_KEYS: Readonly<Record<Fact, string>> = {
  mass: 'mass_kg',
  balance: 'balance_m',
  frontOfCentre: 'front_of_centre',
  massPerDraw: 'mass_per_draw_kgpN',
  bendingFrequency: 'bending_frequency_Hz',
  bendsPerPush: 'bends_per_push',
  pushLoad: 'push_load',
  launchSpeed: 'launch_speed_mps',
  efficiency: 'efficiency',
  launchEnergy: 'launch_energy_J',
  launchMomentum: 'launch_momentum_kgmps',
  dragCoefficient: 'drag_coefficient',
  dragArea: 'drag_area_m2',
  spinPerMetre: 'spin_per_m',
  staticMargin: 'static_margin_m',
  swingWavelength: 'swing_wavelength_m',
  swingDamping: 'swing_damping_m',
};

/** The same for its numbers by range. */
export const ROW_KEYS: Readonly<Record<RowValue, string>> = {
  time: 'time_s',
  speed: 'speed_mps',
  energy: 'energy_J',
  momentum: 'momentum_kgmps',
  drop: 'drop_m',
  height: 'height_m',
  pin: 'pin_m',
  travel: 'travel_m',
  reading: 'reading',
  heightPerTravel: 'height_per_travel',
  highest: 'highest_m',
  descent: 'descent_rad',
  drift: 'drift_m',
  windDrift: 'wind_drift_m',
  spin: 'spin_radps',
};

/** A record under the names that JSON has for its keys. */
export const renamed = <K extends string, V, W>(
  keys: readonly K[],
  names: Readonly<Record<K, string>>,
  record: Readonly<Record<K, V>>,
  of: (value: V) => W,
): Readonly<Record<string, W>> => Object.fromEntries(keys.map((key) => [names[key], of(record[key])]));
