import { LEAST_MARGIN, type SwingAdvice } from '../../advice/launch/swing.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { bowLengthWords } from '../bow-length.ts';
import type { SwingFindings } from './findings.ts';

/** Whether the arrow steers itself, and why. */
export function marginWords(
  { staticMargin, marginSd, marginShare, swing }: SwingAdvice,
  units: DisplayUnits,
): string {
  const error = marginSd === null ? '' : ` (± ${bowLengthWords(marginSd, units, 1)})`;
  const margin =
    `${steadyWord(marginShare)}: the centre of pressure is ${bowLengthWords(staticMargin, units, 1)}${error} ` +
    `behind the balance point, ${(100 * marginShare).toFixed(0)} % of the length of the arrow.`;
  const size =
    swing === null
      ? 'The arrow settles without overshooting.'
      : `One swing takes ${formatQuantity(swing.wavelength, units.range, 1)}, and it dies to 37 % within ` +
        `${formatQuantity(swing.dampingLength, units.range, 1)}.`;
  return `${margin}\n${size}`;
}

const steadyWord = (marginShare: number): string =>
  marginShare < LEAST_MARGIN ? 'Too little to rely on' : 'This arrow steers itself well';

/** Of an arrow whose margin is too small to trust. */
export const smallMarginWords = (): string =>
  `that is less than ${100 * LEAST_MARGIN} %, so anything crooked on this arrow steers it. Use smaller ` +
  'blades, larger vanes, or more weight up front.';

export const startWords = ({ angle, nockSpeed }: SwingFindings, units: DisplayUnits): string =>
  `Launches: the tail ${formatQuantity(angle, 'deg', 1)} left of its path or above it as the arrow leaves, or the ` +
  `nock travelling left at ${formatQuantity(nockSpeed, units.speed, 1)}.`;

/** 12 is straight up, 3 right. */
export const clockHour = (clockwise: number): string =>
  String(((Math.round((clockwise * 6) / Math.PI) + 11) % 12) + 1);
