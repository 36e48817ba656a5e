import { NumericalError } from '../../numerics/numerical-error.ts';
import { bracketedRoot } from '../../numerics/root.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import type { Kilograms, KilogramsPerMetre, Metres, NewtonSquareMetres } from '../../quantities/quantity.ts';
import { type Quantity, si } from '../../quantities/quantity.ts';
import type { Arrow } from '../arrow.ts';
import { nockLength, piecesOf } from './pieces.ts';

/** A mass fixed to a beam; beyond an end it sits on a stiff, light arm. */
interface BeamLoad {
  /** From the rear end, forward; below 0 or above the length when beyond an end. */
  readonly place: number;
  readonly mass: Kilograms;
}

/** A slender beam of one stiffness, free at both ends. */
export interface Beam {
  readonly length: Metres;
  /** EI. */
  readonly stiffness: NewtonSquareMetres;
  readonly massPerLength: KilogramsPerMetre;
  readonly loads: readonly BeamLoad[];
}

/** The slowest bending of a free beam. */
export interface Bending {
  readonly frequency: Quantity<'Hz'>;
  /** Where the beam stands still, from its rear end, rear one first. */
  readonly nodes: readonly Metres[];
}

/** The first root of a free beam with any loads lies below that of the bare one, 4.73 over the length. */
const HIGHEST_FIRST_ROOT = 4.74;
/** Spacing at which the sign of the end condition is looked at, of wave number times length: far below the spacing of roots. */
const ROOT_STRIDE = 0.05;
/** Nodes are looked for at so many places along the beam, then refined. */
const NODE_PLACES = 60;

/**
 * First free-free bending frequency of a uniform beam with point masses, and its two nodes.
 *
 *   EI w'''' = mu (2 pi f)^2 w,   w'' = w''' = 0 at both ends,   EI [w'''] = m (2 pi f)^2 w across a mass m
 *
 * Solved exactly by carrying (w, w', w'', w''') from load to load and asking both end conditions at the front. Rotary
 * inertia, shear and damping are left out: below 1 % for a shaft a hundred diameters long.
 *
 * @throws DomainError for a size that is not above 0 or a load below 0; NumericalError when loads thousands of times the
 *   beam leave no root
 * @source Timoshenko, Vibration Problems in Engineering, chapter on lateral vibrations of beams
 * @checked reference/beam-vibration
 */
export function firstBending(beam: Beam): Bending {
  const { length, stiffness, massPerLength, loads } = beam;
  for (const size of [length, stiffness, massPerLength])
    if (!(size > 0)) throw new DomainError('length, stiffness or mass of a beam', size, 'above 0');
  for (const { place, mass } of loads)
    if (!(mass >= 0 && Number.isFinite(place)))
      throw new DomainError('mass on a beam (kg)', mass, '0 or more');
  const condition = (k: number): number => endCondition(beam, k);
  let low = ROOT_STRIDE / length;
  const first = Math.sign(condition(low));
  let high = low;
  while (Math.sign(condition(high)) === first) {
    if (high * length >= HIGHEST_FIRST_ROOT)
      throw new NumericalError('not-bracketed', 'no bending frequency: the loads outweigh the beam too far');
    low = high;
    high = Math.min(high + ROOT_STRIDE / length, HIGHEST_FIRST_ROOT / length);
  }
  const k = bracketedRoot(condition, low, high, { tolerance: 1e-12 / length });
  return {
    frequency: si((k * k * Math.sqrt(stiffness / massPerLength)) / (2 * Math.PI)),
    nodes: nodesOf(beam, k),
  };
}

/** w, w'/k, w''/k^2, w'''/k^3 of a beam of wave number k. */
type BeamState = readonly [number, number, number, number];

/** Carried over a uniform stretch. */
function along([w, slope, bend, shear]: BeamState, angle: number): BeamState {
  const [ch, sh, c, s] = [Math.cosh(angle), Math.sinh(angle), Math.cos(angle), Math.sin(angle)];
  const [a, b, d, e] = [(ch + c) / 2, (sh + s) / 2, (ch - c) / 2, (sh - s) / 2];
  return [
    a * w + b * slope + d * bend + e * shear,
    e * w + a * slope + b * bend + d * shear,
    d * w + e * slope + a * bend + b * shear,
    b * w + d * slope + e * bend + a * shear,
  ];
}

/** Carried over a stiff arm without mass: it neither bends nor weighs. */
const alongArm = ([w, slope, bend, shear]: BeamState, angle: number): BeamState => [
  w + angle * slope,
  slope,
  bend + angle * shear,
  shear,
];

/** Every place from the rearmost load or end to `until`, in order, with the state there given the state at the start. */
function carried(
  { length, massPerLength, loads }: Beam,
  k: number,
  start: BeamState,
  until: number,
): BeamState {
  let state = start;
  let x = Math.min(0, ...loads.map(({ place }) => place));
  const advance = (to: number): void => {
    const inside = Math.max(0, Math.min(to, length) - Math.max(x, 0));
    const before = Math.max(0, Math.min(to, 0) - x);
    const behind = Math.max(0, to - Math.max(x, length));
    state = alongArm(along(alongArm(state, k * before), k * inside), k * behind);
    x = Math.max(x, to);
  };
  for (const { place, mass } of loads.toSorted((a, b) => a.place - b.place)) {
    if (place > until) break;
    advance(place);
    const [w, slope, bend, shear] = state;
    state = [w, slope, bend, shear + ((mass * k) / massPerLength) * w];
  }
  advance(until);
  return state;
}

const frontmost = ({ length, loads }: Beam): number => Math.max(length, ...loads.map(({ place }) => place));

const DEFLECTED: BeamState = [1, 0, 0, 0];
const TILTED: BeamState = [0, 1, 0, 0];

/** The determinant that vanishes when some motion of the rear leaves the front free of moment and shear. */
function endCondition(beam: Beam, k: number): number {
  const front = frontmost(beam);
  const [, , bend1, shear1] = carried(beam, k, DEFLECTED, front);
  const [, , bend2, shear2] = carried(beam, k, TILTED, front);
  return bend1 * shear2 - bend2 * shear1;
}

function nodesOf(beam: Beam, k: number): readonly Metres[] {
  const front = frontmost(beam);
  const bend1 = carried(beam, k, DEFLECTED, front)[2];
  const bend2 = carried(beam, k, TILTED, front)[2];
  const shape = (x: number): number =>
    bend2 * carried(beam, k, DEFLECTED, x)[0] - bend1 * carried(beam, k, TILTED, x)[0];
  const places = Array.from({ length: NODE_PLACES + 1 }, (_, i) => (beam.length * i) / NODE_PLACES);
  return places.flatMap((x, i) => {
    const next = places[i + 1];
    return next === undefined || shape(x) > 0 === shape(next) > 0
      ? []
      : [si<'m'>(bracketedRoot(shape, x, next, { tolerance: 1e-6 }))];
  });
}

/** An arrow as a beam: the cut shaft, with everything else as a mass at its place. Null without parts or static deflection. */
export function arrowBeam({ parts, stiffness }: Arrow): Beam | null {
  if (parts === null || stiffness === null) return null;
  const weightless = { ...parts, shaft: { ...parts.shaft, massPerLength: si<'kg/m'>(0) } };
  const rear = nockLength(parts.nock);
  return {
    length: parts.shaft.length,
    stiffness,
    massPerLength: parts.shaft.massPerLength,
    loads: piecesOf(weightless)
      .filter(({ mass }) => mass > 0)
      .map(({ place, mass }) => ({ place: place - rear, mass })),
  };
}

/**
 * How near the push of the string comes to buckling the shaft: the thrust at its middle, mass ahead times acceleration,
 * over the Euler load of a column held at both ends.
 *
 *   (m_ahead a) L^2 / (pi^2 EI)
 *
 * Weight at the front raises it, weight at the nock does not: only what lies ahead of a place presses on it. For comparing
 * builds, not for predicting how far one bends.
 *
 * @param acceleration of the arrow along the string's way, m/s2
 * @source Euler's column, e.g. Timoshenko, Strength of Materials
 */
export function pushLoad({ length, stiffness, massPerLength, loads }: Beam, acceleration: number): number {
  const ahead = loads
    .filter(({ place }) => place > length / 2)
    .reduce((sum, { mass }) => sum + mass, (massPerLength * length) / 2);
  return (ahead * acceleration * length ** 2) / (Math.PI ** 2 * stiffness);
}
