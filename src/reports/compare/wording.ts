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
type Wordings<K extends string> = Readonly<Record<K, (units: DisplayUnits) => Wording>>;

const isImperial = ({ smallLength }: DisplayUnits): boolean => smallLength === 'in';

const quantity =
  (label: string, kind: keyof DisplayUnits, [imperial, metric]: Digits) =>
  (units: DisplayUnits): Wording => ({
    label,
    unit: symbolOf(units[kind]),
    digits: isImperial(units) ? imperial : metric,
    shown: (value) => fromSi(value, units[kind]),
  });

/** A number with one unit in both systems: `factor` of them make the SI unit. */
const plain =
  (label: string, unit: string, digits: number, factor = 1) =>
  (): Wording => ({ label, unit, digits, shown: (value) => value * factor });

const massPerDraw = (units: DisplayUnits): Wording =>
  isImperial(units)
    ? {
        label: 'mass per draw weight',
        unit: 'gr/lb',
        digits: 1,
        shown: (value) => fromSi(value, 'gr') / fromSi(1, 'lbf'),
      }
    : { label: 'mass per draw weight', unit: 'g/N', digits: 3, shown: (value) => 1000 * value };

const FACT_WORDS: Wordings<Fact> = {
  mass: quantity('mass', 'mass', [0, 2]),
  balance: quantity('balance, from the nock', 'bowLength', [2, 1]),
  frontOfCentre: plain('front-of-centre', '%', 1, 100),
  massPerDraw,
  bendingFrequency: plain('bending frequency', 'Hz', 1),
  bendsPerPush: plain('bends during the push', '', 3),
  pushLoad: plain('push, of the buckling load', '%', 0, 100),
  launchSpeed: quantity('launch speed', 'speed', [1, 1]),
  efficiency: plain('energy taken along', '%', 1, 100),
  launchEnergy: quantity('energy at launch', 'energy', [1, 1]),
  launchMomentum: quantity('momentum at launch', 'momentum', [3, 3]),
  dragCoefficient: plain('drag coefficient', '', 2),
  dragArea: plain('drag area', 'mm²', 1, 1e6),
  spinPerMetre: quantity('spin, settled', 'spinPerLength', [2, 2]),
  staticMargin: quantity('static margin', 'bowLength', [1, 1]),
  swingWavelength: quantity('swing wavelength', 'range', [1, 1]),
  swingDamping: quantity('swing falls to 1/e in', 'range', [1, 1]),
};

const ROW_WORDS: Wordings<RowValue> = {
  time: plain('time', 's', 3),
  speed: quantity('speed', 'speed', [1, 1]),
  energy: quantity('energy', 'energy', [1, 1]),
  momentum: quantity('momentum', 'momentum', [3, 3]),
  drop: quantity('drop', 'smallLength', [1, 0]),
  height: quantity('height', 'smallLength', [1, 0]),
  pin: plain('pin', 'mm', 2, 1000),
  travel: plain('travel', 'mm', 2, 1000),
  reading: plain('reading', 'scale', 2),
  heightPerTravel: plain('height per travel', '', 1),
  highest: quantity('highest', 'smallLength', [1, 0]),
  descent: quantity('descent', 'angle', [2, 2]),
  drift: quantity('drift', 'smallLength', [3, 1]),
  windDrift: quantity('wind drift', 'smallLength', [1, 0]),
  spin: quantity('spin', 'spin', [0, 0]),
};

export const factWording = (fact: Fact, units: DisplayUnits): Wording => FACT_WORDS[fact](units);
export const rowWording = (value: RowValue, units: DisplayUnits): Wording => ROW_WORDS[value](units);

const CAUSE_WORDS: Readonly<Record<string, string>> = {
  chronograph: 'the chronograph',
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
