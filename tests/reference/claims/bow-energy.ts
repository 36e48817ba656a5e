import { drawCurveFullness } from '../../../src/bow/draw-curve.ts';
import { COMPOUND_VIRTUAL_MASS, fitBowEnergy, launchSpeed } from '../../../src/bow/energy.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const grains = (count: number) => si<'kg'>(count * 64.79891e-6);
const feet = (count: number) => si<'m/s'>(count * 0.3048);

const ARROW = 400; // gr, as the trial quotes its speeds
const ADDED_STRING = 254 - 108; // gr

/** A bow of known efficiency: K = m(1/η − 1), E from one speed. */
const bowOf = (speed: number, efficiency: number) =>
  fitBowEnergy([{ mass: grains(ARROW), speed: feet(speed), speedSd: feet(0.5) }], {
    value: grains(ARROW * (1 / efficiency - 1)),
    logSd: 0.01,
  });

const trials: readonly Case[] = referenceTable('string-weight', 'hickman-kibbe.csv', [
  'bow',
  'light_string_speed_fps',
  'heavy_string_speed_fps',
  'light_string_efficiency_percent',
  'heavy_string_efficiency_percent',
]).flatMap((row) => {
  const value = (column: string): number => cell(row, column).value;
  const heavy = value('heavy_string_speed_fps');
  const bow = bowOf(value('light_string_speed_fps'), value('light_string_efficiency_percent') / 100);
  const heavier = grains(ARROW * (1 / (value('heavy_string_efficiency_percent') / 100) - 1));
  const error = (mass: number): number => 100 * Math.abs(launchSpeed(bow, si(mass)).value / feet(heavy) - 1);
  const name = cell(row, 'bow').text;
  // Efficiencies are printed to a whole percent (1 % of speed) and speeds to 1 ft/s (0.7 %); the paper's own rule misses by 2.8
  // %.
  return [
    {
      name: `${name}, a third of the string on the arrow`,
      error: error(grains(ARROW + ADDED_STRING / 3)),
      allowed: 3,
    },
    {
      name: `${name}, both printed efficiencies`,
      error: error(grains(ARROW) + heavier - bow.virtualMass),
      allowed: 3,
    },
  ];
});

const flightBow: readonly Case[] = referenceTable('string-weight', 'nagler.csv', [
  'arrow_gr',
  'light_string_gr',
  'heavy_string_gr',
  'light_string_speed_fps',
  'heavy_string_speed_fps',
  'equivalent_arrow_gr',
]).map((row) => {
  const value = (column: string): number => cell(row, column).value;
  const arrow = value('arrow_gr');
  const bow = fitBowEnergy(
    [{ mass: grains(arrow), speed: feet(value('heavy_string_speed_fps')), speedSd: feet(0.5) }],
    COMPOUND_VIRTUAL_MASS,
  );
  const lighter = launchSpeed(bow, grains(arrow - value('equivalent_arrow_gr'))).value;
  return {
    name: 'a lighter string on a flight bow',
    error: 100 * Math.abs(lighter / feet(value('light_string_speed_fps')) - 1),
    // The prior's whole span of virtual mass moves this by 0.3 %; speeds are printed to 0.2 %.
    allowed: 1,
  };
});

const fullness: readonly Case[] = referenceTable('stored-energy', 'recurves.csv', [
  'bow',
  'draw_force_N',
  'draw_from_brace_cm',
  'stored_energy_J',
  'ratio',
]).map((row) => {
  const value = (column: string): number => cell(row, column).value;
  const found = drawCurveFullness(
    si(value('stored_energy_J')),
    si(value('draw_force_N')),
    si(value('draw_from_brace_cm') / 100),
  );
  return {
    name: cell(row, 'bow').text,
    error: Math.abs(found - 0.58),
    // 0.58 stands for four bows that lie between 0.581 and 0.595.
    allowed: 0.02,
  };
});

export const claims: readonly Claim[] = [
  {
    kind: 'measured',
    claim: 'Speed lost to moving mass goes as one over the root of arrow and virtual mass',
    source: 'Hickman and Kibbe, and Nagler, in Archery: The Technical Side, 1947',
    unit: '% of speed',
    cases: [...trials, ...flightBow],
    notCovered: 'compounds: no published virtual mass of one could be read',
  },
  {
    kind: 'measured',
    claim: 'Energy stored by a recurve is 0.58 of peak force times power stroke',
    source: 'Tuyn and Kooi, European Journal of Physics, 1992',
    unit: 'of force times stroke',
    cases: fullness,
    notCovered: 'compounds; arrow speeds of the same paper, which were not held',
  },
];
