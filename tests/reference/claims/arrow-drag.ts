import { buildArrow } from '../../../src/arrow/build.ts';
import type { BoundaryLayer } from '../../../src/arrow/drag/boundary-layer.ts';
import { dragCoefficient, dragTerms } from '../../../src/arrow/drag/drag.ts';
import type { ArrowParts, Vanes } from '../../../src/arrow/parts/parts.ts';
import { standardAir } from '../../../src/atmosphere/standard.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Case, Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const folder = 'arrow-drag';

/** The sources' abstracts give no geometry: a common target arrow, ours. */
const smallVanes: Vanes = {
  count: 3,
  mass: si(0.1e-3),
  rootChord: si(0.045),
  tipChord: si(0.02),
  height: si(0.0085),
  thickness: si(0.4e-3),
  fromNock: si(0.02),
  angle: si(0.017),
  turn: 'right',
};
const largeVanes: Vanes = { ...smallVanes, rootChord: si(0.06), tipChord: si(0.03), height: si(0.012) };
const target = (vanes: Vanes): ArrowParts => ({
  shaft: {
    length: si(0.7),
    outerDiameter: si(0.0055),
    innerDiameter: si(0.0042),
    massPerLength: si(0.0175),
  },
  point: { mass: si(7e-3), shape: 'bullet', length: si(0.02) },
  nock: { mass: si(0.5e-3) },
  vanes,
});
const arrows: Readonly<Record<string, ArrowParts>> = { small: target(smallVanes), large: target(largeVanes) };
const arrowWith = (vanes: string): ArrowParts => {
  const arrow = arrows[vanes];
  if (arrow === undefined) throw new Error(`no ${vanes} vanes`);
  return arrow;
};
const layerOf = (text: string): BoundaryLayer => {
  if (text === 'laminar' || text === 'transition' || text === 'turbulent') return text;
  throw new Error(`no boundary layer ${text}`);
};

const coefficients: readonly Case[] = referenceTable(folder, 'coefficients.csv', [
  'source',
  'state',
  'vanes',
  'reynolds',
  'coefficient',
  'allowed',
]).map((row) => ({
  name: `${cell(row, 'source').text}, ${cell(row, 'coefficient').text}`,
  error: Math.abs(
    dragCoefficient(
      arrowWith(cell(row, 'vanes').text),
      layerOf(cell(row, 'state').text),
      cell(row, 'reynolds').value,
    ) - cell(row, 'coefficient').value,
  ),
  allowed: cell(row, 'allowed').value,
}));

const rise: readonly Case[] = referenceTable(folder, 'rise.csv', [
  'from',
  'to',
  'reynolds',
  'rise',
  'allowed',
]).map((row) => {
  const at = (column: string) =>
    dragCoefficient(arrowWith(cell(row, column).text), 'laminar', cell(row, 'reynolds').value);
  return {
    name: 'from small to large vanes',
    error: Math.abs(at('to') - at('from') - cell(row, 'rise').value),
    allowed: cell(row, 'allowed').value,
  };
});

/** Straight flight at 56.4 m/s in sea-level air by the midpoint rule, 1 m at a time: within 1e-5 of the closed form. */
function shot() {
  const { flying } = buildArrow({ parts: target(smallVanes), choices: { boundaryLayer: 'laminar' } });
  const air = standardAir(si(0));
  const section = (Math.PI / 4) * flying.diameter ** 2;
  const rate = (v: number) =>
    ((-air.density * section) / (2 * flying.mass)) *
    v *
    flying.drag.at((air.density * v * flying.diameter) / air.viscosity);
  let [v, time] = [56.4, 0];
  for (let x = 0; x < 70; x++) {
    const middle = v + rate(v) / 2;
    v += rate(middle);
    time += 1 / middle;
  }
  return { 'speed loss (%)': (1 - v / 56.4) * 100, 'time (s)': time };
}
const ours: Readonly<Record<string, number>> = shot();
const shots = referenceTable(folder, 'shot.csv', ['what', 'value', 'allowed']);
const shotCase = (what: string): readonly Case[] =>
  shots
    .filter((row) => cell(row, 'what').text === what)
    .map((row) => ({
      name: what,
      error: Math.abs((ours[what] ?? Number.NaN) - cell(row, 'value').value),
      allowed: cell(row, 'allowed').value,
    }));

const exponents = referenceTable('resistance-1936', 'exponents.csv', [
  'term',
  'diameter',
  'length',
  'vane_area',
]);

/** Drag area over friction coefficient, or over the shape's own coefficient: what is left when Reynolds numbers are frozen. */
function frozen(parts: ArrowParts, term: string): number {
  const terms = dragTerms(parts, 'turbulent', 2e4);
  const named = (name: string) => {
    const found = terms.find((candidate) => candidate.name === name);
    if (found === undefined) throw new Error(`no term ${name}`);
    return found;
  };
  const section = (Math.PI / 4) * parts.shaft.outerDiameter ** 2;
  if (term === 'head') return (named('point').coefficient + named('base').coefficient) * section;
  return named(term === 'shaft' ? 'shaft-friction' : 'vane-friction').area;
}
/** Everything along the shaft, or everything across it, drawn twice as large. */
function scaled(parts: ArrowParts, along: number, across: number): ArrowParts {
  const { shaft, point, nock } = parts;
  return {
    ...parts,
    shaft: {
      ...shaft,
      length: si(along * shaft.length),
      outerDiameter: si(across * shaft.outerDiameter),
      innerDiameter: si(across * shaft.innerDiameter),
    },
    point: { ...point, length: si(along * point.length) },
    nock: { ...nock, length: si(along * 0.00635) },
  };
}
const power = (from: ArrowParts, to: ArrowParts, term: string) =>
  Math.log2(frozen(to, term) / frozen(from, term));
const scaling: readonly Case[] = exponents.flatMap((row) => {
  const term = cell(row, 'term').text;
  const base = scaled(target(smallVanes), 1, 1);
  const found = {
    diameter: power(base, scaled(target(smallVanes), 1, 2), term),
    length: power(base, scaled(target(smallVanes), 2, 1), term),
    vane_area: power(base, { ...base, vanes: { ...smallVanes, count: 6 } }, term),
  };
  return Object.entries(found).map(([column, exponent]) => ({
    name: `${term} with ${column}`,
    error: Math.abs(exponent - cell(row, column).value),
    // Rounding.
    allowed: 1e-12,
  }));
});

export const claims: readonly Claim[] = [
  {
    kind: 'measured',
    claim: 'Drag coefficient of a target arrow, laminar and turbulent',
    source: 'Ortiz and others, 2020; Miyazaki and others, 2013; KAKENHI 18K03943',
    unit: "coefficient on the shaft's section",
    cases: [...coefficients, ...rise],
    notCovered: "the measured arrows' own geometry (not published where it could be read); hunting arrows",
  },
  {
    kind: 'measured',
    claim: 'Speed lost over 70 m by a target arrow',
    source: 'Ortiz and others, 2020',
    unit: '%',
    cases: shotCase('speed loss (%)'),
    notCovered: 'the distance of the published figure',
  },
  {
    kind: 'measured',
    claim: 'Time of a target arrow over 70 m',
    source: 'Miyazaki, public lecture, 2019',
    unit: 's',
    cases: shotCase('time (s)'),
    notCovered: "the archer's own bow",
  },
  {
    kind: 'law',
    claim: 'How head, shaft and vanes scale with diameter, length and area',
    source: 'Rheingans, 1936',
    unit: 'exponent',
    cases: scaling,
    notCovered: 'the 1936 constants, which could not be read',
  },
];
