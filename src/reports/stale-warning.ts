import type { Session } from './session.ts';
import { atRange } from './tune/lengths.ts';
import { roundsOf } from './tune/rounds.ts';
import { CHANGE_WORDS, type StaleMarks, staleMarks } from './tune/stale-marks.ts';

/** The marks that the setup's own tuning log has overtaken; null when there are none. */
export const staleMarksIn = ({ setup }: Pick<Session, 'setup'>): StaleMarks | null =>
  staleMarks(setup, { rounds: roundsOf(setup.tuning?.log ?? []) });

/** What the log says has been altered since marks were shot: those marks say no more where the bow hits. */
export function staleWarnings(session: Session): readonly string[] {
  if (!session.calibrated) return [];
  const stale = staleMarksIn(session);
  if (stale === null) return [];
  const ranges = stale.ranges.map((range) => atRange(range, session.units)).join(', ');
  const changes = stale.changes.map((change) => CHANGE_WORDS[change]).join(' and ');
  return [
    `Stale: the marks at ${ranges} were shot before ${changes} changed (${stale.date}, in the tuning log). Shoot them anew.`,
  ];
}
