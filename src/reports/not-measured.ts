import type { FlyingArrow } from '../arrow/flying-arrow.ts';

/** What stands first wherever it is told where a head with blades hits. */
export const NOT_MEASURED =
  'Not measured on arrows: where heads with blades hit is worked out from the laws of wings, the wake of blades and ' +
  'the launch, each with its error.';

/** Whether an arrow turns into the wind it leaves the bow across; where its parts are not known nobody can tell how. */
export const entersWind = ({ attitude }: FlyingArrow): boolean =>
  attitude !== null && attitude.firstMoment < 0;

/**
 * What the drift of an arrow of unknown parts leaves out, and by how much that usually matters: shares of the whole drift in a
 * side wind by six degrees of freedom for common arrows.
 */
export const ENTRY_LEFT_OUT =
  'Left out, because the file does not list the parts of the arrow: in a crosswind the arrow turns into the wind as it ' +
  'leaves, which pushes it farther downwind. Of the whole drift that is usually 30 to 50 % at 20 yd, ' +
  '10 to 20 % at 60 yd and 4 to ' +
  '9 % at 100 yd with a field point; with fixed blades in front some 85, 45 and 25 to 30 %.';
