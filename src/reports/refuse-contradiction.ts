import { ContradictionError } from './asked/contradiction-error.ts';
import { disagreementWords } from './disagreement-words.ts';
import type { Session } from './session.ts';

/** Whether what is printed from a session is to be marked as a draft. */
export const isDraft = ({ disagreement }: Session): boolean => disagreement?.isContradiction === true;

/** @throws ContradictionError while what was measured contradicts itself, unless it is wanted anyway */
export function refuseContradiction(session: Session, anyway: boolean): void {
  if (isDraft(session) && !anyway) throw new ContradictionError(disagreementWords(session));
}
