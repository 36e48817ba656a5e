import { alterations, type Round } from '../../advice/tuning/next-step.ts';
import { layOutCard } from '../../documents/page/card.ts';
import type { Drawing, PaperName } from '../../documents/page/drawing.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine, dateLine } from '../head.ts';
import type { Session } from '../session.ts';
import { changedWords, nextLine, stepTable } from './overview.ts';
import { CHANGE_WORDS } from './stale-marks.ts';
import { nextOf, type Standing } from './standing.ts';
import { STEP_WORDS } from './step-words.ts';

/** The record of an evening: what was found at every step, what is next, and the lines behind torque, rest and spread. */
export function eveningSheet(
  session: Session,
  { standings, rounds }: { readonly standings: readonly Standing[]; readonly rounds: readonly Round[] },
  { page, day }: { readonly page: PaperName; readonly day: string },
): Drawing {
  const next = nextOf(standings);
  return layOutCard(
    {
      title: `${session.title}: the tuning evening`,
      subtitle: [arrowLine(session), airLine(session), dateLine(day, session)],
      lead: [nextLine(next)],
      tables: [{ title: 'Step by step', ...stepTable(standings) }],
      plots: standings.flatMap(({ step, answer }) =>
        answer.plots.slice(0, 1).map((plot) => ({ ...plot, title: PLOT_TITLES[step] ?? step })),
      ),
      notes: [
        alteredWords(rounds),
        ...standings
          .filter(({ changed, state }) => state === 'stale' && changed.length > 0)
          .map((standing) => `${standing.step}: ${changedWords(standing)}`),
      ].filter((line) => line !== ''),
      cautions: [
        ...(next === null ? [] : STEP_WORDS[next.step].cautions.map(sentence)),
        ...shotCautions(session).map(cautionOnPaper),
      ],
    },
    page,
  );
}

/** What was altered in the course of the evening, day by day. */
function alteredWords(rounds: readonly Round[]): string {
  const altered = alterations(rounds);
  const days = [...new Set(altered.map(({ date }) => date))];
  const ofDay = (day: string): string => {
    const changes = new Set(
      altered.filter(({ date }) => date === day).map(({ change }) => CHANGE_WORDS[change]),
    );
    return `${day}: ${[...changes].join('; ')}`;
  };
  return days.length === 0 ? '' : `Altered, ${days.map(ofDay).join('. ')}.`;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const PLOT_TITLES: Readonly<Record<string, string>> = {
  paper: 'Tears by the place of the rest',
  torque: 'Torque by how far out the sight sits',
  bare: 'Bare shafts by the place of the rest',
  line: 'Scatter square to the line by the place of the rest',
};
