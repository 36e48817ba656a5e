import type { Table } from '../../documents/table/table.ts';
import { openTuning } from '../../setup/tuning/open-tuning.ts';
import type { Asked } from '../asked/option.ts';
import { caution } from '../cautions.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import {
  type Block,
  inWhole,
  note,
  paragraph,
  plotBlock,
  type Report,
  tableBlock,
  verdict,
} from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { changedWords, nextLine, stepTable } from './overview.ts';
import type { question } from './question.ts';
import { eveningSheet } from './sheet.ts';
import { allStanding, nextOf, type Standing, standingOf } from './standing.ts';
import { eveningOf } from './step-answer.ts';
import { STEP_WORDS } from './step-words.ts';

export function report(
  [session]: Sessions,
  asked: Asked<typeof question.options>,
  { sheet: wanted, day }: Occasion,
): Report {
  const record = openTuning(session, asked.log);
  const evening = eveningOf(session, record);
  const alone = asked.step === null || wanted ? null : standingOf(evening, asked.step);
  const standings = alone === null ? allStanding(evening) : [alone];
  const one = asked.step === null ? null : (standings.find(({ step }) => step === asked.step) ?? null);
  const sheet = wanted
    ? eveningSheet(session, { standings, rounds: evening.rounds }, { page: asked.page, day })
    : null;
  const shared = { title: session.title, rows: stepTable(standings), sheet };
  return one === null
    ? { ...shared, blocks: overviewBlocks(session, standings), data: overviewData(session, standings) }
    : { ...shared, blocks: stepBlocks(session, one), rows: rowsOf(one), data: stepData(session, one) };
}

const cautionsOf = ({ step }: Standing): readonly Block[] =>
  STEP_WORDS[step].cautions.map((text): Block => ({ kind: 'caution', ...caution(text) }));

const wrote: Block = { kind: 'sheet', about: 'the record of the evening on one page' };

function overviewBlocks(session: Session, standings: readonly Standing[]): readonly Block[] {
  const next = nextOf(standings);
  return [
    verdict(nextLine(next)),
    ...headBlocks(session),
    tableBlock(stepTable(standings)),
    ...standings
      .filter(({ changed, state }) => state === 'stale' && changed.length > 0)
      .map((standing) => paragraph(`${standing.step}: ${changedWords(standing)}`)),
    ...(next === null
      ? []
      : [paragraph(next.entries === 0 ? STEP_WORDS[next.step].how : next.answer.line), ...cautionsOf(next)]),
    wrote,
  ];
}

function overviewData({ title }: Session, standings: readonly Standing[]): object {
  const next = nextOf(standings);
  return {
    title,
    steps: standings.map(({ step, state, changed, entries, answer }) => ({
      step,
      state,
      changed,
      verdict: answer.verdict,
      line: answer.line,
      entries,
    })),
    next:
      next === null
        ? null
        : {
            step: next.step,
            reason: STEP_WORDS[next.step].reason,
            how: STEP_WORDS[next.step].how,
            caution: STEP_WORDS[next.step].cautions.join(' '),
          },
  };
}

function stepBlocks(session: Session, standing: Standing): readonly Block[] {
  const { answer, state, changed } = standing;
  const [first, ...others] = answer.tables;
  return [
    verdict(answer.line),
    ...headBlocks(session),
    // A first long shot may go over the stop: what keeps it safe stands before the numbers.
    ...(standing.step === 'start' ? cautionsOf(standing) : []),
    ...(state === 'stale' && changed.length > 0 ? [paragraph(changedWords(standing))] : []),
    ...answer.paragraphs.map(paragraph),
    ...(first === undefined ? [] : [tableBlock(first)]),
    ...inWhole(...others.map((table) => tableBlock(table)), ...answer.plots.map(plotBlock)),
    ...inWhole(...answer.notes.map(note)),
    ...(standing.step === 'start' ? [] : cautionsOf(standing)),
    wrote,
  ];
}

const stepData = ({ title }: Session, { step, state, entries, answer, facts }: Standing): object => ({
  title,
  step,
  state,
  done: facts.done,
  verdict: answer.verdict,
  line: answer.line,
  reason: STEP_WORDS[step].reason,
  entries,
  cautions: STEP_WORDS[step].cautions,
  ...answer.data,
});

/** The first table of a step for a spreadsheet, or the step itself where it has none. */
const rowsOf = (standing: Standing): Table => standing.answer.tables[0] ?? stepTable([standing]);
