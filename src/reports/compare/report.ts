import type { TunedBuild } from '../../advice/builds/tuned-build.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges, signedWind } from '../asked/quantity.ts';
import { ringSize } from '../asked/ring-size.ts';
import { cautionBlocks } from '../cautions.ts';
import { headBlocks } from '../head.ts';
import { ENTRY_LEFT_OUT, entersWind, NOT_MEASURED } from '../not-measured.ts';
import type { Occasion } from '../occasion.ts';
import {
  type Block,
  inShort,
  inWhole,
  note,
  paragraph,
  plotBlock,
  type Report,
  tableBlock,
  verdict,
  warning,
} from '../report.ts';
import type { Sessions } from '../session.ts';
import { bowLines } from './bow-words.ts';
import { buildTable, dragTable, longTable } from './build-tables.ts';
import { compareCautions } from './cautions.ts';
import { choiceWords } from './choice.ts';
import { compareData } from './data.ts';
import { factTable, rangeTable } from './difference-tables.ts';
import { FAR_LEGEND, farTable, farWords, shortVerdict } from './far-table.ts';
import { buildsOf, type CompareFindings, compareFindings } from './findings.ts';
import { groupTable } from './group-table.ts';
import { markPlot } from './plots.ts';
import type { question } from './question.ts';
import {
  buildLegend,
  changes,
  differenceLegend,
  speedWords,
  stiffnessLines,
  surroundingsLine,
  verdictLines,
} from './words.ts';

export async function report(
  sessions: Sessions,
  asked: Asked<typeof question.options>,
  occasion: Occasion,
): Promise<Report> {
  const questions = {
    ranges: optionRanges(asked),
    crosswind: signedWind('crosswind', asked.crosswind),
    ring: ringSize(asked.ring),
  };
  const found = await compareFindings(sessions, questions, asked.arrows, occasion);
  const [{ title, units }] = sessions;
  const sheet = occasion.sheet
    ? (await import('./sheet.ts')).compareSheet(found, { page: asked.page, day: occasion.day })
    : null;
  return {
    title,
    blocks: blocksOf(found, sheet?.isCut === true ? 'names of builds are cut short to fit the page' : ''),
    rows: longTable(found.comparison, units),
    data: compareData(found),
    sheet: sheet === null ? null : sheet.drawing,
  };
}

/** Whether blades steer the arrow from the front. */
const isBladed = ({ arrow }: TunedBuild): boolean =>
  arrow.surfaces !== null && arrow.surfaces.blades !== null;

function blocksOf(found: CompareFindings, aboutSheet: string): readonly Block[] {
  const { session, comparison } = found;
  const { base, others } = comparison;
  const builds = buildsOf(comparison);
  return [
    ...(builds.some(({ build }) => isBladed(build)) ? [verdict(NOT_MEASURED)] : []),
    ...inShort(verdict(choiceWords(found))),
    { kind: 'sheet', about: aboutSheet },
    ...inShort(verdict(shortVerdict(found))),
    ...inWhole(
      ...others.map((contrast) => verdict(verdictLines(found, contrast))),
      verdict(choiceWords(found)),
    ),
    ...headBlocks(session),
    paragraph(surroundingsLine(found)),
    ...inShort(
      paragraph(`Against ${base.build.name}, ${farWords(found)}:`),
      tableBlock(farTable(found)),
      note(FAR_LEGEND),
    ),
    ...inWhole(...wholeBlocks(found)),
    ...cautionBlocks(session, compareCautions(found)),
  ];
}

function wholeBlocks(found: CompareFindings): readonly Block[] {
  const { session, comparison } = found;
  const { units } = session;
  const { base, others, questions } = comparison;
  const builds = buildsOf(comparison);
  const groups = groupTable(found);
  return [
    ...others.flatMap((contrast) => [
      paragraph(`${contrast.readings.build.name}, against ${base.build.name}${changes(found, contrast)}`),
      tableBlock(factTable(base, contrast, units)),
      tableBlock(rangeTable(questions.ranges, contrast, units)),
    ]),
    note(differenceLegend(found)),
    ...(builds.every(({ build }) => entersWind(build.rig.conditions.arrow))
      ? []
      : [warning(`wind drift. ${ENTRY_LEFT_OUT}`)]),
    paragraph(bowLines(session, base)),
    ...(groups === null ? [] : [tableBlock(groups)]),
    tableBlock(dragTable(builds)),
    ...builds.flatMap((readings) => [
      paragraph(`${readings.build.name}${speedWords(readings.build.speedFrom)}`),
      tableBlock(buildTable(questions.ranges, readings, units)),
    ]),
    note(buildLegend(found)),
    plotBlock(markPlot(comparison, units)),
    note(stiffnessLines(found)),
  ];
}
