import type { Cause, Variation } from '../../advice/scatter/scatter-causes.ts';
import type { RangeScatter } from '../../advice/scatter/scatter-groups.ts';
import type { Vanes } from '../../arrow/parts/parts.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeColumn, rangeWords } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';

/** What one fletching makes of the same differences. */
export interface VaneScatter {
  readonly vanes: Vanes;
  /** With blades in front. */
  readonly bladed: boolean;
  readonly ranges: readonly RangeScatter[];
}

export interface ScatterFindings {
  readonly session: Session;
  /** The setup's own vanes first. */
  readonly found: readonly VaneScatter[];
  readonly variation: Variation;
  readonly group: number;
  readonly arrows: number;
}

export const scatterText = (findings: ScatterFindings, io: Io): string =>
  paragraphs([
    verdict(findings),
    headLines(findings.session).join('\n'),
    variationWords(findings),
    renderTableText(groupTable(findings)),
    plotText(groupPlot(findings), plotSize(io)),
    ...findings.found.flatMap((one) => [
      `With ${vaneWords(one.vanes)}, the share of each cause, and what no sum explains:`,
      renderTableText(shareTable(findings.session, one)),
    ]),
    `shares: of the variance when each varies alone. together: what they do to one another; below nought one undoes another, as when a
vane that is off spins an arrow whose head leans. Groups are the mean largest distance of ${findings.group} hits, from ${findings.arrows} arrows.`,
  ]);

const vaneWords = ({ angle, turn }: Vanes): string =>
  turn === 'none' || angle === 0 ? 'straight vanes' : `${formatQuantity(angle, 'deg', 1)} ${turn} helical`;

function verdict({ session: { units }, found, group }: ScatterFindings): string {
  const size = (one: VaneScatter | undefined) => one?.ranges.at(-1)?.group ?? Number.NaN;
  const range = rangeWords(found[0]?.ranges.at(-1)?.range ?? Number.NaN, units);
  const [own, other] = found;
  const said = [own, other].map((one) =>
    one === undefined
      ? ''
      : `${formatQuantity(size(one), units.smallLength, units.smallLength === 'in' ? 1 : 0)} with ${vaneWords(one.vanes)}`,
  );
  const ratio = Math.max(size(own), size(other)) / Math.min(size(own), size(other));
  const why =
    ratio < 1.05
      ? 'Hardly a difference: little on this arrow steers it, so there is little for the spin to average out. Blades in front change that: see --broadhead.'
      : 'What is crooked steers the arrow one way as long as it does not turn, and in a small circle when it does: the spin averages it out.';
  return `At ${range} groups of ${group}${own?.bladed === true ? ' with broadheads' : ''} are ${said.join(', and ')}. ${why}`;
}

const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  mass: 'mass',
  balance: 'balance',
  speed: 'speed',
  bend: 'bent shaft',
  vane: 'vane off',
  head: 'head leaning',
  nockTravel: 'nock travel',
};

function variationWords({ session: { units, assembly }, variation }: ScatterFindings): string {
  const { mass, balance, speed, bend, vane, head, nockTravel } = variation;
  const small = units.smallLength === 'in' ? ([4, 2] as const) : ([3, 1] as const);
  return `Standard deviations: mass ${formatQuantity(mass, units.mass, 2)}, balance ${formatQuantity(balance, units.smallLength, small[1])}, speed ${formatQuantity(speed, units.speed, 2)}, sag of the shaft ${formatQuantity(bend, units.smallLength, small[0])},
one vane ${formatQuantity(vane, 'deg', 2)}, head ${formatQuantity(head, 'deg', 2)}, nock travel ${formatQuantity(nockTravel * assembly.arrow.flying.balance, units.speed, 3)}.`;
}

const lengthColumn = ({ units }: Session) => ({
  unit: symbolOf(units.smallLength),
  digits: units.smallLength === 'in' ? 2 : 0,
});

function groupTable({ session, found }: ScatterFindings): Table {
  const { range, smallLength } = session.units;
  const length = lengthColumn(session);
  return {
    columns: [
      rangeColumn(
        (found[0]?.ranges ?? []).map((row) => row.range),
        { range },
      ),
      ...found.flatMap(({ vanes }) => [
        { name: `group, ${vaneWords(vanes)}`, ...length },
        { name: 'aside sd', ...length },
        { name: 'height sd', ...length },
      ]),
    ],
    rows: (found[0]?.ranges ?? []).map((row, i) => [
      fromSi(row.range, range),
      ...found.flatMap(({ ranges }) =>
        [ranges[i]?.group, ranges[i]?.lateralSd, ranges[i]?.verticalSd].map((value) =>
          fromSi(value ?? Number.NaN, smallLength),
        ),
      ),
    ]),
  };
}

function shareTable({ units }: Session, { ranges }: VaneScatter): Table {
  const causes = ranges[0]?.causes ?? [];
  return {
    columns: [
      rangeColumn(
        ranges.map((row) => row.range),
        units,
      ),
      ...causes.map(({ cause }) => ({ name: CAUSE_WORDS[cause], unit: '%', digits: 1 })),
      { name: 'together', unit: '%', digits: 0 },
    ],
    rows: ranges.map((row) => [
      fromSi(row.range, units.range),
      ...row.causes.map(({ share }) => 100 * share),
      100 * row.together,
    ]),
  };
}

function groupPlot({ session: { units }, found }: ScatterFindings): Plot {
  return {
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'group', unit: symbolOf(units.smallLength) },
    series: found.map(({ vanes, ranges }) => ({
      name: vaneWords(vanes),
      kind: 'line',
      points: [
        { x: 0, y: 0 },
        ...ranges.map(({ range, group }) => ({
          x: fromSi(range, units.range),
          y: fromSi(group, units.smallLength),
        })),
      ],
    })),
  };
}

/** Every fletching and range in a row, with the group each cause would make alone. */
export function scatterTable(session: Session, found: readonly VaneScatter[]): Table {
  const { range, smallLength } = session.units;
  const length = lengthColumn(session);
  return {
    columns: [
      { name: 'vanes', unit: '' },
      rangeColumn(
        (found[0]?.ranges ?? []).map((row) => row.range),
        { range },
      ),
      { name: 'group', ...length },
      { name: 'aside sd', ...length },
      { name: 'height sd', ...length },
      ...(found[0]?.ranges[0]?.causes ?? []).flatMap(({ cause }) => [
        { name: `${CAUSE_WORDS[cause]} alone`, ...length },
        { name: `${CAUSE_WORDS[cause]} share`, unit: '%', digits: 1 },
      ]),
    ],
    rows: found.flatMap(({ vanes, ranges }) =>
      ranges.map((row) => [
        vaneWords(vanes),
        fromSi(row.range, range),
        fromSi(row.group, smallLength),
        fromSi(row.lateralSd, smallLength),
        fromSi(row.verticalSd, smallLength),
        ...row.causes.flatMap(({ group, share }) => [fromSi(group, smallLength), 100 * share]),
      ]),
    ),
  };
}
