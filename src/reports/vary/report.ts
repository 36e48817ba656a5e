import { FACTS, ROW_VALUES } from '../../advice/builds/build-readings.ts';
import { gridPoint } from '../../advice/builds/vary.ts';
import { at } from '../../numerics/at.ts';
import type { Asked } from '../asked/option.ts';
import { flownRange, signedWind } from '../asked/quantity.ts';
import { cautionBlocks, shotCautions } from '../cautions.ts';
import { datumBy, FACT_FIELDS, ROW_FIELDS } from '../compare/fields.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { inWhole, note, plotBlock, type Report, tableBlock, verdict } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { variedKey } from './axes.ts';
import { type VaryFindings, varyFindings } from './findings.ts';
import { outputsOf } from './outputs.ts';
import { varyPlot } from './plots.ts';
import type { question } from './question.ts';
import { varyTable } from './tables.ts';
import { failureLines, lightCautions, speedWords, verdictWords } from './words.ts';

export async function report(
  [session]: Sessions,
  asked: Asked<typeof question.options>,
  occasion: Occasion,
): Promise<Report> {
  const { units } = session;
  const ranges = asked.at
    .split(',')
    .map((range): number => flownRange('at', range.trim()))
    .toSorted((a, b) => a - b);
  const outputs = outputsOf('show', asked.show, ranges, units);
  const [plotted] = asked.plot === null ? outputs.slice(-1) : outputsOf('plot', asked.plot, ranges, units);
  const crosswind = signedWind('crosswind', asked.crosswind);
  const found = await varyFindings(session, { axes: asked.over.map(variedKey), ranges, crosswind }, occasion);
  const [table, plot] = [varyTable(found, outputs), varyPlot(found, plotted)];
  return {
    title: session.title,
    blocks: [
      verdict(verdictWords(found, table)),
      ...headBlocks(session),
      tableBlock(table),
      ...inWhole(...(plot === null ? [] : [plotBlock(plot)])),
      note(failureLines(found)),
      note(speedWords(found.axes)),
      ...cautionBlocks(session, lightCautions(found.cells)),
      ...cautionBlocks(session, shotCautions(session)),
    ],
    rows: table,
    data: dataFor(session, found),
    sheet: null,
  };
}

const same = (value: number | null): number | null => value;

const dataFor = ({ title, calibrated }: Session, { axes, ranges, cells }: VaryFindings): object => ({
  title,
  calibrated,
  over: axes.map(({ name, values }) => ({ key: name, values })),
  rows: cells.map((cell, i) => {
    const point = gridPoint(axes, i);
    const set = Object.fromEntries(axes.map(({ name }, k) => [name, at(point, k)]));
    if ('failure' in cell) return { set, failure: cell.failure };
    const { facts, rows } = cell;
    return {
      set,
      failure: null,
      ...datumBy(FACT_FIELDS, FACTS, facts, same),
      rows: rows.map((row, k) => ({ range_m: at(ranges, k), ...datumBy(ROW_FIELDS, ROW_VALUES, row, same) })),
    };
  }),
});
