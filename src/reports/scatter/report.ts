import type { Asked } from '../asked/option.ts';
import { optionRanges } from '../asked/quantity.ts';
import { dataOf, datumOf } from '../field.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { inShort, inWhole, note, paragraph, plotBlock, type Report, tableBlock, verdict } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { CAUSE_FIELDS, SPREAD_FIELDS } from './fields.ts';
import { bothOf, type ScatterFindings, scatterFindings } from './findings.ts';
import { groupPlot } from './plots.ts';
import type { question } from './question.ts';
import { groupTable, scatterTable, shareTable } from './tables.ts';
import { variationFrom } from './variation.ts';
import { groupWords, legendWords, shareWords, variationWords, verdictWords } from './words.ts';

export async function report(
  [session]: Sessions,
  asked: Asked<typeof question.options>,
  occasion: Occasion,
): Promise<Report> {
  const { units, assembly } = session;
  const { group, arrows, seed, broadhead } = asked;
  const variation = variationFrom(asked, assembly.arrow.flying.balance);
  const found = await scatterFindings(
    session,
    { ranges: optionRanges(asked), variation, group, arrows, seed, broadhead },
    occasion,
  );
  return {
    title: session.title,
    blocks: [
      verdict(verdictWords(found, units)),
      ...headBlocks(session),
      paragraph(variationWords(session, found)),
      tableBlock(groupTable(found, units)),
      ...inWhole(
        plotBlock(groupPlot(found, units)),
        ...bothOf(found).flatMap((one) => [paragraph(shareWords(one)), tableBlock(shareTable(one, units))]),
        note(legendWords(found)),
      ),
      ...inShort(note(groupWords(found))),
    ],
    rows: scatterTable(found, units),
    data: dataFor(session, found),
    sheet: null,
  };
}

const dataFor = ({ title, calibrated }: Session, found: ScatterFindings): object => ({
  title,
  calibrated,
  broadhead: found.own.bladed,
  arrows: found.asked.arrows,
  group: found.asked.group,
  seed: found.asked.seed,
  builds: bothOf(found).map(({ vanes, ranges }) => ({
    vane_angle_rad: vanes.angle,
    turn: vanes.turn,
    rows: ranges.map((row) => ({
      ...datumOf(SPREAD_FIELDS, row),
      causes: dataOf(CAUSE_FIELDS, row.causes),
    })),
  })),
});
