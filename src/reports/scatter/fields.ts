import type { Cause } from '../../advice/scatter/scatter-causes.ts';
import type { CauseScatter, RangeScatter } from '../../advice/scatter/scatter-groups.ts';
import { exactRanges, type Field } from '../field.ts';
import { targetDigits } from '../side-words.ts';

/** How the hits of all causes together lie at one range. */
export const SPREAD_FIELDS: readonly Field<RangeScatter>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'group_m', name: 'group', unit: 'smallLength', digits: targetDigits, of: ({ group }) => group },
  {
    key: 'lateral_sd_m',
    name: 'lateral sd',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ lateralSd }) => lateralSd,
  },
  {
    key: 'vertical_sd_m',
    name: 'height sd',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ verticalSd }) => verticalSd,
  },
  { key: 'together', of: ({ together }) => together },
];

/** Keys of a cause in the JSON document. */
const CAUSE_KEYS: Readonly<Record<Cause, string>> = {
  mass: 'mass',
  balance: 'balance',
  speed: 'speed',
  bend: 'bend',
  vane: 'vane',
  head: 'head',
  nockTravel: 'nock_travel',
};

/** What one cause would do alone. */
export const CAUSE_FIELDS: readonly Field<CauseScatter>[] = [
  { key: 'cause', of: ({ cause }) => CAUSE_KEYS[cause] },
  { key: 'share', of: ({ share }) => share },
  { key: 'group_m', of: ({ group }) => group },
  { key: 'lateral_sd_m', of: ({ lateralSd }) => lateralSd },
  { key: 'vertical_sd_m', of: ({ verticalSd }) => verticalSd },
];
