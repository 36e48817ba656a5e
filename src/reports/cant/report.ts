import { rangeWords } from '../../documents/table/range-digits.ts';
import { asFarAsItGoes, type Reach } from '../../sight/reach.ts';
import { anglesBothWays } from '../asked/angles.ts';
import type { Asked } from '../asked/option.ts';
import { optionRanges } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { headBlocks } from '../head.ts';
import { reachNotes } from '../reach-words.ts';
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
} from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { cantData } from './data.ts';
import { type CantFindings, cantFindings } from './findings.ts';
import { driftPlot } from './plots.ts';
import type { question } from './question.ts';
import { cantTable, causeTable, costTable, driftTable } from './tables.ts';
import { groupWords, leanWords, verdictWords } from './words.ts';

export function report([session]: Sessions, asked: Asked<typeof question.options>): Report {
  const cants = anglesBothWays({ option: 'most', text: asked.most }, { option: 'step', text: asked.step });
  const { solved: found, ...reach } = asFarAsItGoes(session.calibration.rig, optionRanges(asked), (ranges) =>
    cantFindings(session, { ranges, cants }),
  );
  return {
    title: session.title,
    blocks: blocksOf(session, found, reach),
    rows: cantTable(found, session.units),
    data: cantData(session, found, reach),
    sheet: null,
  };
}

/** Of the second table on a screen. */
const SHORT_ROWS = 5;

function blocksOf(session: Session, found: CantFindings, reach: Reach): readonly Block[] {
  const { units, calibration } = session;
  return [
    verdict(verdictWords(session, found)),
    ...headBlocks(session),
    ...(found.verdict.reason === 'worth doing'
      ? [paragraph(leanWords(session, found))]
      : inWhole(paragraph(leanWords(session, found)))),
    paragraph('Drift by cause with the bow upright, left (-) or right:'),
    tableBlock(driftTable(found, units)),
    ...inWhole(
      plotBlock(driftPlot(found, units)),
      ...(found.fit.residuals.length === 0
        ? []
        : [paragraph('What the groups say about left and right:'), tableBlock(causeTable(session, found))]),
      paragraph(groupWords(session, found)),
    ),
    paragraph('What an unnoticed cant costs, left (-) or right, and low (-) or high:'),
    ...inShort(tableBlock(costTable(found, units, SHORT_ROWS))),
    ...inWhole(tableBlock(costTable(found, units))),
    note(
      `kept: the same cant at every shot, with windage and height set again at ${rangeWords(calibration.rig.zeroRange, units)}.`,
    ),
    ...reachNotes(reach, units).map(note),
    ...cautionBlocks(session),
  ];
}
