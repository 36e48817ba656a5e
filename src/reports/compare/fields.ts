import type { Fact, RowValue } from '../../advice/builds/build-readings.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';

/** How a number of a build is shown to a person. */
export interface Wording {
  readonly label: string;
  readonly unit: string;
  readonly digits: number;
  /** From SI. */
  readonly shown: (value: number) => number;
}

/** Decimals in imperial and in metric units. */
type Digits = readonly [imperial: number, metric: number];

/** A number of a build, named once: its key in JSON (SI, the unit in the name) and how it is shown. */
interface NumberField {
  readonly key: string;
  readonly shown: (units: DisplayUnits) => Wording;
}
type NumberFields<K extends string> = Readonly<Record<K, NumberField>>;

const isImperial = ({ smallLength }: DisplayUnits): boolean => smallLength === 'in';

const quantity =
  (label: string, kind: keyof DisplayUnits, [imperial, metric]: Digits) =>
  (units: DisplayUnits): Wording => ({
    label,
    unit: symbolOf(units[kind]),
    digits: isImperial(units) ? imperial : metric,
    shown: (value) => fromSi(value, units[kind]),
  });

const massField = (units: DisplayUnits): Wording => ({
  label: 'mass',
  unit: symbolOf(units.mass),
  digits: units.mass === 'gr' ? 0 : 2,
  shown: (value) => fromSi(value, units.mass),
});

/** A number with one unit in both systems: `factor` of them make the SI unit. */
const plain =
  (label: string, unit: string, digits: number, factor = 1) =>
  (): Wording => ({ label, unit, digits, shown: (value) => value * factor });

const massPerDraw = (units: DisplayUnits): Wording =>
  units.mass === 'gr'
    ? {
        label: 'mass per draw weight',
        unit: 'gr/lb',
        digits: 1,
        shown: (value) => fromSi(value, 'gr') / fromSi(1, 'lbf'),
      }
    : { label: 'mass per draw weight', unit: 'g/N', digits: 3, shown: (value) => 1000 * value };

export const FACT_FIELDS: NumberFields<Fact> = {
  mass: { key: 'mass_kg', shown: massField },
  balance: { key: 'balance_m', shown: quantity('balance, from the nock', 'bowLength', [2, 1]) },
  frontOfCentre: { key: 'front_of_centre', shown: plain('front-of-centre', '%', 1, 100) },
  massPerDraw: { key: 'mass_per_draw_kgpN', shown: massPerDraw },
  bendingFrequency: { key: 'bending_frequency_Hz', shown: plain('bending frequency', 'Hz', 1) },
  bendsPerPush: { key: 'bends_per_push', shown: plain('bends during the push', '', 3) },
  pushLoad: { key: 'push_load', shown: plain('push, of the buckling load', '%', 0, 100) },
  launchSpeed: { key: 'launch_speed_mps', shown: quantity('launch speed', 'speed', [1, 1]) },
  efficiency: { key: 'efficiency', shown: plain('energy to the arrow', '%', 1, 100) },
  launchEnergy: { key: 'launch_energy_J', shown: quantity('energy at launch', 'energy', [1, 1]) },
  launchMomentum: { key: 'launch_momentum_kgmps', shown: quantity('momentum at launch', 'momentum', [3, 3]) },
  dragCoefficient: { key: 'drag_coefficient', shown: plain('drag coefficient', '', 2) },
  dragArea: { key: 'drag_area_m2', shown: plain('drag area', 'mm²', 1, 1e6) },
  spinPerMetre: { key: 'spin_per_m', shown: quantity('spin, settled', 'spinPerLength', [2, 2]) },
  staticMargin: { key: 'static_margin_m', shown: quantity('static margin', 'bowLength', [1, 0]) },
  swingWavelength: { key: 'swing_wavelength_m', shown: quantity('swing wavelength', 'range', [1, 1]) },
  swingDamping: { key: 'swing_damping_m', shown: quantity('swing dies to 37 % in', 'range', [1, 1]) },
};

export const ROW_FIELDS: NumberFields<RowValue> = {
  time: { key: 'time_s', shown: plain('time', 's', 3) },
  speed: { key: 'speed_mps', shown: quantity('speed', 'speed', [1, 1]) },
  energy: { key: 'energy_J', shown: quantity('energy', 'energy', [1, 1]) },
  momentum: { key: 'momentum_kgmps', shown: quantity('momentum', 'momentum', [3, 3]) },
  drop: { key: 'drop_m', shown: quantity('drop', 'smallLength', [1, 0]) },
  height: { key: 'height_m', shown: quantity('height', 'smallLength', [1, 0]) },
  pin: { key: 'pin_m', shown: plain('pin', 'mm', 2, 1000) },
  travel: { key: 'travel_m', shown: plain('travel', 'mm', 2, 1000) },
  reading: { key: 'reading', shown: plain('reading', 'scale', 2) },
  heightPerTravel: { key: 'height_per_travel', shown: plain('height per travel', '', 1) },
  highest: { key: 'highest_m', shown: quantity('highest', 'smallLength', [1, 0]) },
  descent: { key: 'descent_rad', shown: quantity('descent', 'angle', [2, 2]) },
  drift: { key: 'drift_m', shown: quantity('drift', 'smallLength', [3, 1]) },
  windDrift: { key: 'wind_drift_m', shown: quantity('wind drift', 'smallLength', [1, 0]) },
  spin: { key: 'spin_radps', shown: quantity('spin', 'spin', [0, 0]) },
};

export const factWording = (fact: Fact, units: DisplayUnits): Wording => FACT_FIELDS[fact].shown(units);
export const rowWording = (value: RowValue, units: DisplayUnits): Wording => ROW_FIELDS[value].shown(units);

/** The numbers of a record under the keys that JSON has for them. */
export const datumBy = <K extends string, V, W>(
  fields: NumberFields<K>,
  names: readonly K[],
  record: Readonly<Record<K, V>>,
  of: (value: V) => W,
): Readonly<Record<string, W>> =>
  Object.fromEntries(names.map((name) => [fields[name].key, of(record[name])]));

const CAUSE_WORDS: Readonly<Record<string, string>> = {
  chronograph: 'the chronograph',
  lift: 'the laws of lift and the wake of blades',
  'nock travel': 'how the nock leaves the string',
  rating: 'the rating of the bow',
  'drag law': 'the drag of a built-up shape',
  'given drag': 'the drag coefficient',
  'peep height': 'the peep height',
  'virtual mass': 'the virtual mass of the bow',
  shots: 'the scatter of the shot marks',
  sight: "the sight's scale",
};

/** What an error mostly comes from, in words. */
export const causeWords = (kind: string): string => CAUSE_WORDS[kind] ?? kind;
