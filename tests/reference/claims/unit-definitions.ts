import { fitBowEnergy, launchEnergy } from '../../../src/bow/energy.ts';
import { fromSi, siUnitOf, toSi } from '../../../src/quantities/format.ts';
import { parseQuantity } from '../../../src/quantities/parse.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const folder = 'unit-definitions';
const units = referenceTable(folder, 'units.csv', ['unit', 'si_value', 'si_unit', 'exact']);
const temperatures = referenceTable(folder, 'temperatures.csv', ['fahrenheit', 'celsius', 'kelvin']);
const energy = referenceTable(folder, 'energy.csv', ['grain_fps2_per_ftlbf']);

/** Doubles carry 16 digits; a factor is the product of up to four of them. */
const ROUNDING = 1e-15;

/** The units under test by their names in the file, so that the types hold. */
const NAMES = [
  ...(['in', 'ft', 'yd', 'gr', 'lb', 'lbf', 'ftlbf', 'mph', 'fps', 'inHg', 'hPa'] as const),
  ...(['deg', 'arcmin', 'rpm', '%'] as const),
];

const factorCases = units.flatMap((row): readonly Case[] => {
  const { text: name } = cell(row, 'unit');
  const unit = NAMES.find((known) => known === name);
  if (unit === undefined || siUnitOf(unit) !== cell(row, 'si_unit').text) throw new Error(`no unit ${name}`);
  const { value, half } = cell(row, 'si_value');
  const allowed = cell(row, 'exact').value === 1 ? ROUNDING : half / value;
  return [
    { name: `1 ${name} in SI`, error: Math.abs(toSi(1, unit) / value - 1), allowed },
    { name: `${name} from SI`, error: Math.abs(fromSi(value, unit) - 1), allowed },
  ];
});

const divisor = cell(energy[0] ?? {}, 'grain_fps2_per_ftlbf');
/** ½ m v² of one grain at one foot per second. */
const perUnit = fromSi(0.5 * toSi(1, 'gr') * toSi(1, 'fps') ** 2, 'ftlbf');
const energyCase: Case = {
  name: 'm v² in grain ft² s⁻² over ½ m v² in ft lbf',
  error: Math.abs(1 / perUnit / divisor.value - 1),
  allowed: divisor.half / divisor.value,
};

/** As the bow's answer for an arrow is shown: mass and speed as typed, energy of the arrow at launch. */
const shownCases = (
  [
    [350, 340],
    [450, 280],
    [620, 195],
  ] as const
).map(([grains, fps]): Case => {
  const mass = parseQuantity(`${grains} gr`, 'mass');
  const speed = parseQuantity(`${fps} fps`, 'speed');
  const shown = fromSi(launchEnergy(fitBowEnergy([{ mass, speed, speedSd: si(0.3) }]), mass).value, 'ftlbf');
  return {
    name: `${grains} gr at ${fps} ft/s`,
    error: Math.abs((shown * divisor.value) / (grains * fps ** 2) - 1),
    // The divisor's print, and the fit that passes through its only reading.
    allowed: 2 * (divisor.half / divisor.value),
  };
});

/** 59 °F passes through 459.67 and 5/9, which doubles hold to 1e-13 K. */
const KELVIN_ROUNDING = 1e-12;

const temperatureCases = temperatures.flatMap((row): readonly Case[] => {
  const kelvin = cell(row, 'kelvin').value;
  const { text: fahrenheit } = cell(row, 'fahrenheit');
  const { text: celsius } = cell(row, 'celsius');
  const off = (text: string) => Math.abs(parseQuantity(text, 'temperature') - kelvin);
  return [
    { name: `${fahrenheit} °F`, error: off(`${fahrenheit} degF`), allowed: KELVIN_ROUNDING },
    { name: `${celsius} °C`, error: off(`${celsius} °C`), allowed: KELVIN_ROUNDING },
    {
      name: `${kelvin} K in °F`,
      error: Math.abs(fromSi(kelvin, 'degF') - Number(fahrenheit)),
      allowed: KELVIN_ROUNDING,
    },
  ];
});

export const claims: readonly Claim[] = [
  {
    kind: 'definition',
    claim: 'Units of the trade are what their definitions say, both ways',
    source: 'International Yard and Pound Agreement 1959; NIST SP 811 (2008); SI brochure (2019)',
    unit: 'relative',
    cases: factorCases,
    notCovered: 'units that mathjs knows and no archer writes',
  },
  {
    kind: 'definition',
    claim: 'Kinetic energy in ft lbf from grains and ft/s',
    source: 'definitions of pound-force, grain and foot',
    unit: 'relative',
    cases: [energyCase, ...shownCases],
    notCovered: 'the 450 240 that is common in the trade, 0.04 % off (SOURCE.md)',
  },
  {
    kind: 'definition',
    claim: 'Temperatures agree on three scales at their fixed points',
    source: 'definitions of the scales',
    unit: 'K',
    cases: temperatureCases,
    notCovered: 'the difference between the scales of 1968 and 1990',
  },
];
