import { type BroadheadStart, broadheadMisses, type Shot } from '../../advice/launch/broadhead.ts';
import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import type { Arrow } from '../../arrow/arrow.ts';
import type { ArrowParts, Blades } from '../../arrow/parts/parts.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { paragraphs, present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import type { Launch } from '../../flight/launch.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { si } from '../../quantities/quantity.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import { changedBuild, conditionsWith, partsOf } from '../changed-build.ts';
import { flownRanges } from '../flown-ranges.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';

export interface BroadheadOptions extends AnswerOptions {
  readonly blades: number;
  readonly length: string;
  readonly cuttingDiameter: string;
  readonly thickness: string;
  readonly to: string;
  readonly every: string;
  readonly angle: string;
  readonly nockTravel: string;
}

interface Findings {
  readonly session: Session;
  readonly field: Arrow;
  readonly broadhead: Arrow;
  readonly blades: Blades;
  readonly starts: readonly BroadheadStart[];
  readonly angle: number;
  readonly nockSpeed: number;
}

export function runBroadhead(io: Io, path: string, options: BroadheadOptions): void {
  const session = openNamedFile(io, path, options);
  const parts = partsOf(session, 'broadhead');
  const own = session.assembly.arrow;
  const blades = parts.point.blades ?? bladesOf(options);
  const isBladed = parts.point.shape === 'fixed_blade';
  const other = changedBuild(session, withPoint(parts, isBladed ? null : blades));
  const [field, broadhead] = isBladed ? [other, own] : [own, other];
  const launch = straightLaunch(session.calibration.rig);
  const angle = optionQuantity('angle', options.angle, 'angle');
  const nockSpeed = optionQuantity('nockTravel', options.nockTravel, 'speed');
  const start = { angle, rate: si<'rad/s'>(nockSpeed / own.flying.balance) };
  const ranges = flownRanges(optionRanges(options), launch, session.units);
  const found: Findings = {
    session,
    field,
    broadhead,
    blades,
    starts: broadheadMisses(shot(session, field, launch), shot(session, broadhead, launch), start, ranges),
    angle,
    nockSpeed,
  };
  present(io, options, {
    text: () => text(found),
    json: () => json(found),
    table: () => table(found),
  });
}

const shot = (session: Session, arrow: Arrow, launch: Launch): Shot => ({
  conditions: conditionsWith(session, arrow),
  launch,
});

const bladesOf = ({ blades, length, cuttingDiameter, thickness }: BroadheadOptions): Blades => ({
  count: blades,
  length: optionQuantity('length', length, 'length'),
  cuttingDiameter: optionQuantity('cuttingDiameter', cuttingDiameter, 'length'),
  thickness: optionQuantity('thickness', thickness, 'length'),
});

/** The same weight and length in front, with blades or as a field point. */
const withPoint = (parts: ArrowParts, blades: Blades | null): ArrowParts => ({
  ...parts,
  point:
    blades === null
      ? { ...parts.point, shape: 'field', blades: undefined }
      : { ...parts.point, shape: 'fixed_blade', blades },
});

const marginShare = ({ staticMargin, length }: Arrow): number =>
  (staticMargin ?? Number.NaN) / (length ?? Number.NaN);

const arrowJson = (arrow: Arrow): object => ({
  mass_kg: arrow.flying.mass,
  static_margin_m: arrow.staticMargin,
  margin_share: marginShare(arrow),
  margin_too_small: marginShare(arrow) < LEAST_MARGIN,
  spin_per_m: arrow.flying.attitude?.spinPerMetre ?? null,
});

const json = ({ session, field, broadhead, blades, starts, angle, nockSpeed }: Findings): object => ({
  title: session.title,
  calibrated: session.calibrated,
  least_margin_share: LEAST_MARGIN,
  field: arrowJson(field),
  broadhead: arrowJson(broadhead),
  blades: {
    count: blades.count,
    length_m: blades.length,
    cutting_diameter_m: blades.cuttingDiameter,
    thickness_m: blades.thickness,
  },
  start_angle_rad: angle,
  nock_travel_mps: nockSpeed,
  starts: starts.map(({ name, misses }) => ({
    name,
    rows: misses.map(({ range, right, high }) => ({ range_m: range, right_m: right, high_m: high })),
  })),
});

function table({ session: { units }, starts }: Findings): Table {
  const length = { unit: symbolOf(units.smallLength), digits: units.smallLength === 'in' ? 2 : 0 };
  return {
    columns: [
      rangeColumn(
        (starts[0]?.misses ?? []).map(({ range }) => range),
        units,
      ),
      ...starts.flatMap(({ name }) => [
        { name: `${name}: right`, ...length },
        { name: `${name}: high`, ...length },
      ]),
    ],
    rows: (starts[0]?.misses ?? []).map(({ range }, i) => [
      fromSi(range, units.range),
      ...starts.flatMap(({ misses }) => [
        fromSi(misses[i]?.right ?? Number.NaN, units.smallLength),
        fromSi(misses[i]?.high ?? Number.NaN, units.smallLength),
      ]),
    ]),
  };
}

const text = (found: Findings): string =>
  paragraphs([
    marginLines(found),
    headLines(found.session).join('\n'),
    'Where the broadhead hits, from where the field point hits out of the same launch; right and high positive:',
    renderTableText(table(found)),
    launchLine(found),
    highLine(found),
    'A broadhead that leans or a crooked shaft adds to this: see the command scatter. Sight broadheads in on their own, and shoot them only at a stop made for them.',
  ]);

/** Why a clean broadhead of more drag lands high; empty when it does not. */
const highLine = ({ starts }: Findings): string =>
  (starts[0]?.misses.at(-1)?.high ?? 0) > 0
    ? 'High out of a clean start, though it has more drag: an arrow leaves the string not yet turning with its falling path, so it rides nose-high through its first swing, and blades in front lift it until it has turned. That sets a small upward angle in the first yards; a nock set a little higher undoes it, and hides it in most bows.'
    : '';

function marginLines({ session: { units }, field, broadhead, blades }: Findings): string {
  const margin = (arrow: Arrow) =>
    `${formatQuantity(arrow.staticMargin ?? Number.NaN, units.bowLength, 1)} (${(100 * marginShare(arrow)).toFixed(0)} % of the length)`;
  const head = `${blades.count} blades, ${formatQuantity(blades.length, units.bowLength, 2)} long, ${formatQuantity(blades.cuttingDiameter, units.bowLength, 2)} across`;
  const lines = [
    `The air takes hold ${margin(field)} behind the balance point with a field point, ${margin(broadhead)} with the broadhead: ${head}.`,
  ];
  if (marginShare(broadhead) < LEAST_MARGIN)
    lines.push(
      `Warning: below ${100 * LEAST_MARGIN} % whatever is crooked on the arrow steers it. Take smaller blades, larger vanes, or more weight in front.`,
    );
  return lines.join('\n');
}

const launchLine = ({ session: { units }, angle, nockSpeed }: Findings): string =>
  `clean: the shaft leaves along its flight. tail left, tail high: ${formatQuantity(angle, 'deg', 1)} off it. nock travel left: the nock moves across at ${formatQuantity(nockSpeed, units.speed, 1)}.`;
