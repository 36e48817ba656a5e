import { optionalText } from './option.ts';

/** A sight that was moved since the marks were shot: the marks then, with nothing shot again. */
export const SIGHT_OPTIONS = {
  peepToPin: optionalText(
    'length',
    'from the peep to the pin now, where the sight was moved since the marks were shot',
  ),
  extension: optionalText(
    'length',
    'pin ahead of the grip now, in place of peep-to-pin; the file needs sight.extension',
  ),
  peepHeight: optionalText(
    'length',
    'peep above the arrow now, where the peep was moved since the marks were shot',
  ),
};
