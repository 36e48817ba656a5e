import { ownSpread } from '../../calibration/own-spread.ts';
import type { SetupFile } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';

/** Standard deviation of one arrow per metre of range from the file's groups, or the usual one. */
export const archerSpread = ({
  setup: { marks = [] },
}: {
  readonly setup: Pick<SetupFile, 'marks'>;
}): number =>
  ownSpread(
    marks.map(({ range, arrows, group }) => ({
      range,
      arrows: arrows ?? defaultOf('marks.arrows'),
      group: group ?? null,
    })),
    defaultOf('marks.arrow_spread'),
  );
