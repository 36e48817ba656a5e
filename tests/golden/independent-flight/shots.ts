import { tabulatedDrag } from '../../../src/arrow/drag/drag-curve.ts';
import type { FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import { liftMoments } from '../../../src/arrow/lift/normal-force.ts';
import { windFrom } from '../../../src/atmosphere/wind.ts';
import type { FlightConditions } from '../../../src/flight/conditions.ts';
import type { EarthPlace } from '../../../src/flight/frame.ts';
import type { Launch } from '../../../src/flight/launch.ts';
import { STANDARD_GRAVITY } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { cell, type Row, tableAt } from '../../reference/table.ts';

export const file = (name: string, columns: readonly string[]): readonly Row[] =>
  tableAt(`tests/golden/independent-flight/${name}`, columns);

const arrows = file('arrows.csv', [
  'arrow',
  'mass_kg',
  'diameter_m',
  'drag',
  'drag_scale',
  'axial_inertia_kgm2',
  'spin_radpm',
  'roll_m4',
  'nose_slope',
  'nose_place_m',
  'vane_slope',
  'vane_place_m',
  'rear_m',
  'front_m',
  'side_force',
]);
const drags = file('drag.csv', ['drag', 'reynolds', 'coefficient']);
const cases = file('cases.csv', [
  'case',
  'arrow',
  'speed_mps',
  'elevation_rad',
  'bearing_rad',
  'forward_m',
  'above_m',
  'right_m',
  'spin_radps',
  'slope_deg',
  'eye_m',
  'density_kgpm3',
  'viscosity_Pas',
  'wind_mps',
  'wind_from_deg',
  'shear',
  'wind_height_m',
  'latitude_deg',
  'azimuth_deg',
]);

const radians = (degrees: number) => si<'rad'>((degrees * Math.PI) / 180);

function arrowOf(name: string): FlyingArrow {
  const row = arrows.find((candidate) => cell(candidate, 'arrow').text === name);
  if (row === undefined) throw new Error(`no arrow ${name}`);
  const value = (column: string): number => cell(row, column).value;
  const lifts = (['nose', 'vane'] as const).map((surface) => ({
    slope: value(`${surface}_slope`),
    place: value(`${surface}_place_m`),
  }));
  const [normalSlope, firstMoment, secondMoment] = liftMoments(lifts);
  const [rear, front] = [value('rear_m'), value('front_m')];
  return {
    mass: si(value('mass_kg')),
    diameter: si(value('diameter_m')),
    drag: tabulatedDrag(
      drags
        .filter((point) => cell(point, 'drag').text === cell(row, 'drag').text)
        .map((point) => ({
          reynolds: cell(point, 'reynolds').value,
          coefficient: cell(point, 'coefficient').value,
        })),
    ),
    dragScale: value('drag_scale'),
    attitude: {
      axialInertia: si(value('axial_inertia_kgm2')),
      transverseInertia: si(1e-3),
      spinPerMetre: si(value('spin_radpm')),
      spinUp: si((2 * value('axial_inertia_kgm2')) / value('roll_m4')),
      normalSlope,
      firstMoment: si(firstMoment),
      secondMoment: si(secondMoment),
      shaftMoments: [front - rear, (front ** 2 - rear ** 2) / 2, (front ** 3 - rear ** 3) / 3],
    },
    sideForce: value('side_force'),
    balance: si(-value('rear_m')),
    fletchRadius: si(0.015),
  };
}

function placeOf(row: Row): EarthPlace | null {
  const [latitude, azimuth] = [cell(row, 'latitude_deg'), cell(row, 'azimuth_deg')];
  if (latitude.text === '') return null;
  return {
    latitude: radians(latitude.value),
    azimuth: azimuth.text === '' ? null : radians(azimuth.value),
  };
}

function conditionsOf(row: Row): FlightConditions {
  const value = (column: string): number => cell(row, column).value;
  return {
    arrow: arrowOf(cell(row, 'arrow').text),
    air: {
      temperature: si(288.15),
      pressure: si(101_325),
      humidity: si(0),
      density: si(value('density_kgpm3')),
      viscosity: si(value('viscosity_Pas')),
    },
    wind: windFrom(
      si(value('wind_mps')),
      radians(value('wind_from_deg')),
      value('shear'),
      si(value('wind_height_m')),
    ),
    slope: radians(value('slope_deg')),
    freeFall: STANDARD_GRAVITY,
    eyeHeight: si(value('eye_m')),
    place: placeOf(row),
  };
}

function launchOf(row: Row): Launch {
  const value = (column: string): number => cell(row, column).value;
  const [speed, up, aside] = [value('speed_mps'), value('elevation_rad'), value('bearing_rad')];
  return {
    position: [value('forward_m'), value('above_m'), value('right_m')],
    velocity: [
      speed * Math.cos(up) * Math.cos(aside),
      speed * Math.sin(up),
      speed * Math.cos(up) * Math.sin(aside),
    ],
    spin: si(value('spin_radps')),
  };
}

/** One case of the independent solver, as ours takes it. */
export interface Shot {
  readonly name: string;
  readonly conditions: FlightConditions;
  readonly launch: Launch;
}

export const shots: readonly Shot[] = cases.map((row) => ({
  name: cell(row, 'case').text,
  conditions: conditionsOf(row),
  launch: launchOf(row),
}));
