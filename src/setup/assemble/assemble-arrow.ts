import type { Arrow } from '../../arrow/arrow.ts';
import { buildArrow } from '../../arrow/build.ts';
import { USUAL_BORE } from '../../arrow/parts/assumed-arrow.ts';
import type { ArrowParts, Shaft, Vanes } from '../../arrow/parts/parts.ts';
import { oncePer } from '../../numerics/once.ts';
import { INCH } from '../../quantities/exact.ts';
import { type KilogramsPerMetre, type Metres, si } from '../../quantities/quantity.ts';
import type { ArrowSection, PartsSection } from '../schema/schema.ts';
import { sumGiven } from '../sum-given.ts';
import { DEFAULT_WORDS, defaultOf } from './defaults.ts';

/** Thousandths of an inch, as spines are numbered, in metres. */
const SPINE_UNIT = 1e-3 * INCH;

/**
 * The arrow of a setup: from its parts, its measured totals, or both. It is put together once, though its parts are first held
 * against one another and then flown.
 */
export const assembleArrow: (section: ArrowSection) => Arrow = oncePer(arrowOf);

function arrowOf(section: ArrowSection): Arrow {
  const { mass, balance, diameter, length, drag_coefficient: drag, parts } = section;
  return buildArrow({
    parts: parts === undefined ? undefined : assembleParts(parts, section),
    totals: {
      mass,
      balance,
      diameter,
      length,
      dragCoefficient:
        typeof drag === 'object'
          ? drag.map(({ reynolds, value }) => ({ reynolds, coefficient: value }))
          : drag,
    },
    choices: {
      boundaryLayer: section.boundary_layer ?? DEFAULT_WORDS['arrow.boundary_layer'],
      sideForce: section.side_force ?? defaultOf('arrow.side_force'),
    },
  });
}

/** Undefined when shaft or point is missing: single parts do not make an arrow, and the reader has said so. */
function assembleParts(parts: PartsSection, section: ArrowSection): ArrowParts | undefined {
  const { shaft, insert, collar, point, nock, vanes, others } = parts;
  if (shaft === undefined || point === undefined) return undefined;
  return {
    shaft: {
      length: shaft.length,
      outerDiameter: section.diameter,
      innerDiameter: shaft.inner_diameter ?? si(USUAL_BORE * section.diameter),
      massPerLength: shaft.mass_per_length ?? remainingMassPerLength(shaft.length, parts, section),
      deflection: shaft.deflection === undefined ? undefined : si<'m'>(shaft.deflection * SPINE_UNIT),
    } satisfies Shaft,
    insert: insert && { mass: insert.mass, length: insert.length ?? defaultOf('arrow.parts.insert.length') },
    collar: collar && {
      mass: collar.mass,
      length: collar.length ?? defaultOf('arrow.parts.collar.length'),
      diameter: collar.diameter,
    },
    point: {
      mass: point.mass,
      shape: point.shape ?? DEFAULT_WORDS['arrow.parts.point.shape'],
      length: point.length ?? defaultOf('arrow.parts.point.length'),
      blades: point.blades && {
        count: point.blades.count,
        length: point.blades.length,
        cuttingDiameter: point.blades.cutting_diameter,
        thickness: point.blades.thickness,
      },
    },
    nock: {
      mass: nock?.mass ?? defaultOf('arrow.parts.nock.mass'),
      length: nock?.length ?? defaultOf('arrow.parts.nock.length'),
    },
    vanes: vanes && assembleVanes(vanes),
    others: others?.map(({ name, mass, from_nock: fromNock }) => ({ name, mass, fromNock })),
  };
}

const assembleVanes = (vanes: NonNullable<PartsSection['vanes']>): Vanes => ({
  count: vanes.count ?? defaultOf('arrow.parts.vanes.count'),
  mass: vanes.mass,
  rootChord: vanes.root_chord,
  tipChord: vanes.tip_chord,
  height: vanes.height,
  thickness: vanes.thickness ?? defaultOf('arrow.parts.vanes.thickness'),
  fromNock: vanes.from_nock ?? defaultOf('arrow.parts.vanes.from_nock'),
  angle: vanes.angle ?? defaultOf('arrow.parts.vanes.angle'),
  turn: vanes.turn ?? DEFAULT_WORDS['arrow.parts.vanes.turn'],
  sweep: vanes.sweep,
  leadingEdge: vanes.leading_edge ?? DEFAULT_WORDS['arrow.parts.vanes.leading_edge'],
  trailingEdge: vanes.trailing_edge ?? DEFAULT_WORDS['arrow.parts.vanes.trailing_edge'],
});

/** A shaft of unknown weight is what the weighed arrow leaves when its other parts are taken off. */
function remainingMassPerLength(
  length: Metres,
  { insert, collar, point, nock, vanes, others = [] }: PartsSection,
  { mass = si(0) }: ArrowSection,
): KilogramsPerMetre {
  const rest = sumGiven(
    insert?.mass,
    collar?.mass,
    point?.mass,
    nock?.mass ?? defaultOf('arrow.parts.nock.mass'),
    vanes && vanes.mass * (vanes.count ?? defaultOf('arrow.parts.vanes.count')),
    ...others.map((other) => other.mass),
  );
  return si((mass - rest) / length);
}
