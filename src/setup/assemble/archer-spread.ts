import { ownSpread } from '../../calibration/own-spread.ts';
import { defaultOf } from './defaults.ts';
import { type HasShots, shotsIn } from './shots.ts';

/** Standard deviation of one arrow per metre of range from the file's groups, or the usual one. */
export const archerSpread = ({ setup }: { readonly setup: HasShots }): number =>
  ownSpread(
    shotsIn(setup).marks.map(({ range, arrows, group }) => ({
      range,
      arrows: arrows ?? defaultOf('marks.arrows'),
      group: group ?? null,
    })),
    defaultOf('marks.arrow_spread'),
  );
