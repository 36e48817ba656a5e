import type { ThirdAxisMiss } from '../../advice/lean/third-axis.ts';
import type { SlopeMark } from '../../advice/range/slope.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { cautionLines, shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';
import { heightWords, sideWords, targetDigits } from '../side-words.ts';
import { cutTable, slopeTable } from './tables.ts';

/** One shot up or down a slope. */
export interface SlopeRow {
  readonly mark: SlopeMark;
  readonly third: ThirdAxisMiss;
}

/** Everything the command `slope` found. */
export interface SlopeFindings {
  readonly session: Session;
  readonly thirdAxis: number;
  /** By slope, then range; level ground left out. */
  readonly rows: readonly SlopeRow[];
}

function firstLine({ session: { units }, rows }: SlopeFindings): string {
  const settable = rows.filter(({ mark }) => mark.markRange !== null);
  const worst = settable.toSorted((a, b) => Math.abs(b.mark.missByCosine) - Math.abs(a.mark.missByCosine))[0];
  if (worst === undefined) return '';
  const { mark } = worst;
  const at = `${rangeWords(mark.range, units)} and ${formatQuantity(Math.abs(mark.slope), 'deg', 0)} ${mark.slope > 0 ? 'uphill' : 'downhill'}`;
  const [set, cosine] = [mark.markRange ?? mark.range, mark.cosineRange].map((value) =>
    formatQuantity(value, units.range, 1),
  );
  return `At ${at} set ${set}: the cosine rule says ${cosine} and hits ${heightWords(mark.missByCosine, units)}, its worst in this table.`;
}

function thirdAxisLine({ session: { units }, rows, thirdAxis }: SlopeFindings): string {
  const worst = rows.toSorted((a, b) => Math.abs(b.third.lateral) - Math.abs(a.third.lateral))[0];
  if (worst === undefined) return '';
  const { third } = worst;
  return `A level whose right end points ${formatQuantity(thirdAxis, 'deg', 1)} ahead (third axis) costs nothing on the flat, and ${sideWords(third.lateral, units)} at ${rangeWords(third.range, units)} and ${formatQuantity(third.slope, 'deg', 0)}: with its bubble centred the bow is canted ${formatQuantity(third.cant, 'deg', 2)}.`;
}

function plot({ session: { units }, rows }: SlopeFindings): Plot {
  const farthest = Math.max(...rows.map(({ mark }) => mark.range));
  const far = rows.filter(({ mark }) => mark.range === farthest && mark.markRange !== null);
  const line = (name: string, of: (mark: SlopeMark) => number) => ({
    name,
    kind: 'line' as const,
    points: far.map(({ mark }) => ({ x: fromSi(mark.slope, 'deg'), y: fromSi(of(mark), units.range) })),
  });
  return {
    x: { label: 'slope, uphill positive', unit: '°' },
    y: { label: `mark to set at ${rangeWords(farthest, units)}`, unit: symbolOf(units.range) },
    series: [
      line('what hits', ({ markRange }) => markRange ?? farthest),
      line('cosine rule', ({ cosineRange }) => cosineRange),
    ],
  };
}

export function slopeText(found: SlopeFindings, io: Io): string {
  const { units } = found.session;
  const marks = found.rows.map(({ mark }) => mark);
  const range = symbolOf(units.range);
  const length = { unit: symbolOf(units.smallLength), digits: targetDigits(units) };
  return paragraphs([
    firstLine(found),
    headLines(found.session).join('\n'),
    'The level mark to set, downhill (-) to uphill (+); "-": a pin above every mark, set the highest:',
    renderTableText(
      slopeTable(units, marks, {
        unit: range,
        digits: 1,
        value: ({ markRange }) => (markRange === null ? null : fromSi(markRange, units.range)),
      }),
    ),
    'For the pocket: take this off the range (its top row is the slope):',
    renderTableText(cutTable(units, marks)),
    'Where the cosine rule hits, low (-) or high:',
    renderTableText(
      slopeTable(units, marks, {
        ...length,
        value: ({ missByCosine }) => fromSi(missByCosine, units.smallLength),
      }),
    ),
    plotText(plot(found), plotSize(io)),
    thirdAxisLine(found),
    cautionLines(shotCautions(found.session)),
  ]);
}
