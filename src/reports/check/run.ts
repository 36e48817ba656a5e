import { swing } from '../../arrow/lift/swing.ts';
import { densityAltitude } from '../../atmosphere/standard.ts';
import type { Io } from '../../cli/io.ts';
import { paragraphs, present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { renderTableText } from '../../documents/render/text.ts';
import type { Table } from '../../documents/table/table.ts';
import type { DisplayUnits, UnitSystem } from '../../quantities/display-units.ts';
import { type DisplayUnit, formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { assumedIn } from '../../setup/assemble/assumed.ts';
import { unusedUncertainties } from '../../setup/assemble/unused-uncertainties.ts';
import { cautionLines, shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';

export interface CheckOptions {
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly uncalibrated?: boolean;
}

export function runCheck(io: Io, path: string, options: CheckOptions): void {
  const session = openNamedFile(io, path, options);
  present(io, options, {
    text: () => text(session, path),
    json: () => json(session),
    table: () => dragTable(session),
  });
}

const reynoldsOf = ({ calibration }: Session): number => {
  const { air, arrow } = calibration.rig.conditions;
  return (air.density * calibration.rig.launchSpeed * arrow.diameter) / air.viscosity;
};

const termsOf = (session: Session) => {
  const { dragTerms, boundaryLayer } = session.assembly.arrow;
  return dragTerms === null ? [] : dragTerms(boundaryLayer, reynoldsOf(session));
};

function json(session: Session): object {
  const { arrow } = session.assembly;
  const { air } = session.calibration.rig.conditions;
  const { flying } = arrow;
  return {
    title: session.title,
    calibrated: session.calibrated,
    mass_kg: flying.mass,
    diameter_m: flying.diameter,
    balance_m: flying.balance,
    length_m: arrow.length,
    front_of_centre: arrow.frontOfCentre,
    axial_inertia_kgm2: flying.attitude?.axialInertia ?? null,
    transverse_inertia_kgm2: flying.attitude?.transverseInertia ?? null,
    static_margin_m: arrow.staticMargin,
    spin_per_m: flying.attitude?.spinPerMetre ?? null,
    spin_up_m: flying.attitude === null ? null : flying.attitude.spinUp / air.density,
    launch_speed_mps: session.calibration.rig.launchSpeed,
    drag_coefficient:
      flying.drag.at(reynoldsOf(session)) * session.calibration.rig.conditions.arrow.dragScale,
    drag_terms: termsOf(session),
    pieces: arrow.pieces.map(({ name, mass, place }) => ({ name, mass_kg: mass, from_nock_m: place })),
    differences: arrow.differences,
    air: {
      temperature_K: air.temperature,
      pressure_Pa: air.pressure,
      humidity: air.humidity,
      density_kgpm3: air.density,
      viscosity_Pas: air.viscosity,
      density_altitude_m: densityAltitude(air.density),
    },
    assumed: assumedIn(session.setup),
    unused: unusedUncertainties(session.setup),
  };
}

function pieceTable({ assembly, units }: Session): Table {
  return {
    title: 'Arrow, part by part',
    columns: [
      { name: 'part', unit: '' },
      { name: 'mass', unit: symbolOf(units.mass), digits: 1 },
      { name: 'middle from nock', unit: symbolOf(units.bowLength), digits: 2 },
    ],
    rows: assembly.arrow.pieces.map(({ name, mass, place }) => [
      name,
      fromSi(mass, units.mass),
      fromSi(place, units.bowLength),
    ]),
  };
}

function dragTable(session: Session): Table {
  const terms = termsOf(session);
  const total = terms.reduce((sum, { coefficient }) => sum + coefficient, 0);
  const given = session.assembly.arrow.dragFrom === 'given';
  return {
    title: `Drag at launch speed, term by term, on the shaft's cross-section${given ? ' (the coefficient in the file replaces it)' : ''}`,
    columns: [
      { name: 'term', unit: '' },
      { name: 'coefficient', unit: '', digits: 3 },
      { name: 'Reynolds number', unit: '', digits: 0 },
      { name: 'law', unit: '' },
    ],
    rows: [
      ...terms.map(({ name, coefficient, reynolds, source }) => [
        name.replace('-', ' '),
        coefficient,
        reynolds,
        source,
      ]),
      ['sum', total, null, given ? '' : 'prior standard uncertainty 15 % unless the file says otherwise'],
    ],
  };
}

function arrowLines(session: Session): string {
  const { assembly, units, calibration } = session;
  const { arrow } = assembly;
  const { flying } = arrow;
  const { air } = calibration.rig.conditions;
  const lines = [
    `mass              ${formatQuantity(flying.mass, units.mass, 1)}`,
    `balance from nock ${formatQuantity(flying.balance, units.bowLength, 2)}`,
  ];
  if (arrow.frontOfCentre !== null)
    lines.push(`front of centre   ${formatQuantity(arrow.frontOfCentre, '%', 1)}`);
  if (flying.attitude !== null) {
    const { axialInertia, transverseInertia, spinPerMetre, spinUp } = flying.attitude;
    const swinging = swing(flying, air.density, flying.drag.at(reynoldsOf(session)));
    lines.push(
      `inertia           ${axialInertia.toExponential(3)} kg m² about the shaft, ${transverseInertia.toExponential(3)} kg m² across it`,
      `static margin     ${marginWords(arrow.staticMargin ?? 0, units.bowLength)}`,
      `spin              ${spinWords(spinPerMetre, spinUp / air.density, units)}`,
    );
    if (swinging !== null)
      lines.push(
        `swing             ${formatQuantity(swinging.wavelength, units.range, 1)} a wave, to 37 % in ${formatQuantity(swinging.dampingLength, units.range, 1)}`,
      );
  }
  for (const { what, measured, fromParts } of arrow.differences) {
    const [unit, digits] = what === 'mass' ? ([units.mass, 1] as const) : ([units.bowLength, 3] as const);
    lines.push(
      `${what}: measured ${formatQuantity(measured, unit, digits)}, parts add up to ${formatQuantity(fromParts, unit, digits)}; the measurement is used`,
    );
  }
  return lines.join('\n');
}

const marginWords = (margin: number, unit: DisplayUnit): string =>
  `${formatQuantity(Math.abs(margin), unit, 1)}: centre of pressure ${margin > 0 ? 'behind' : 'ahead of'} the balance point`;

const spinWords = (spin: number, growth: number, { spinPerLength, range }: DisplayUnits): string =>
  spin === 0
    ? 'none: the vanes do not turn it'
    : `${formatQuantity(spin, spinPerLength, 3)}, ${spin > 0 ? 'clockwise' : 'anticlockwise'} from behind; 63 % of it after ${formatQuantity(growth, range, 1)}`;

function assumedText({ setup, assembly }: Session): string {
  const keys = assumedIn(setup).map(({ key, text, why }) => `  ${key}: ${text} (${why})`);
  const assumptions = assembly.arrow.assumptions.map(
    (assumption) => `  ${assumption}: the file names neither parts nor a measured value`,
  );
  if (keys.length + assumptions.length === 0) return '';
  return ['Taken for granted because the file does not say:', ...keys, ...assumptions].join('\n');
}

function unusedText({ setup }: Session): string {
  const unused = unusedUncertainties(setup);
  return unused.length === 0 ? '' : ['Written but not used:', ...unused.map((key) => `  ${key}`)].join('\n');
}

const text = (session: Session, path: string): string =>
  paragraphs([
    `${path} is sound.`,
    headLines(session).join('\n'),
    arrowLines(session),
    session.assembly.arrow.pieces.length === 0 ? '' : renderTableText(pieceTable(session)),
    termsOf(session).length === 0 ? '' : renderTableText(dragTable(session)),
    assumedText(session),
    unusedText(session),
    cautionLines(shotCautions(session)),
  ]);
