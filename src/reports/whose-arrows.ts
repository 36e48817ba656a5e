import { shotsIn } from '../setup/assemble/shots.ts';
import type { OpenSetup } from '../setup/open.ts';

/** Whose scatter an answer goes by: the archer's where a group was measured, else what is assumed of a good archer. */
export const whoseArrow = ({ setup }: Pick<OpenSetup, 'setup'>): string =>
  isMeasured(setup) ? 'one of your arrows' : "a good archer's arrow (assumed: no group is in the file)";

const isMeasured = (setup: OpenSetup['setup']): boolean =>
  shotsIn(setup).marks.some(({ group }) => group !== undefined);
