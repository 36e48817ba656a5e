import type { Finding } from '../../calibration/diagnose.ts';
import type { Measurement } from '../../calibration/measurement.ts';
import { at } from '../../numerics/at.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Session } from '../session.ts';
import { parameterWords } from './parameter-words.ts';

/** What stands out in a fit, in words an archer can act on. */
export function findingWords(session: Session, finding: Finding): string {
  const words = parameterWords(session);
  switch (finding.kind) {
    case 'no marks':
      return 'No marks were shot yet: everything below rests on the ruler and the chronograph alone, and its errors are wide.';
    case 'one mark':
      return 'One mark alone cannot tell speed, drag and scale apart: it shifts all of them a little. Add one at long range.';
    case 'outlier': {
      const { measurement } = at(session.calibration.residuals, finding.index);
      return (
        `${measurementWords(session, measurement)} lies ${Math.abs(finding.studentised).toFixed(1)} of its ` +
        'standard errors from the rest. Was the reading written down wrongly, the range misjudged, ' +
        'or the bow torqued? Shoot it again, or take it out and compare.'
      );
    }
    case 'layer':
      return layerWords(finding.isLaminar, finding.chance);
    case 'at bound':
      return (
        `No bow explains these marks: the fit pushed ${words[finding.parameter].name} as far as it goes. ` +
        'Look for a reading or a range written down wrongly, and whether the scale grows the way ' +
        '"increases" says.'
      );
    case 'scatter':
      return (
        `The marks scatter more than their groups explain (chance ${percent(finding.chance)}); all errors ` +
        `below are widened ${finding.widening.toFixed(1)} times to what is seen.`
      );
    case 'tied':
      return (
        `These marks cannot separate ${words[finding.parameter].name} from ${words[finding.to].name}: the ` +
        'tape is surer than either number. A mark at a very different range, or a chronograph ' +
        'reading down range, would.'
      );
    case 'far from prior': {
      const { name } = words[finding.parameter];
      return (
        `${capital(name)} came out ${Math.abs(finding.sds).toFixed(1)} standard errors from what was ` +
        'measured: measure it again.'
      );
    }
  }
}

/** Which of two drags a slim arrow came to have. */
function layerWords(isLaminar: boolean, chance: number): string {
  const sure = `${(100 * chance).toFixed(0)} %`;
  const open =
    'A slim arrow with a smooth point at this speed flies either with the drag of its build-up or with half of it, by the layer of air along the shaft.';
  if (chance < TOLD_APART)
    return `${open} The marks do not tell which (${sure} for ${isLaminar ? 'half of it' : 'the drag of the build-up'}); all errors below hold both. A mark at long range, or a chronograph reading down range, would tell.`;
  return `${open} The marks say ${isLaminar ? 'half' : 'the drag of the build-up'} (${sure}).`;
}
/** From this chance on the marks are said to have told one from the other. */
const TOLD_APART = 0.95;

/** A measurement by its range: "The 60 yd mark". */
function measurementWords({ units }: Session, measurement: Measurement): string {
  const range = formatQuantity(measurement.range, units.range, 0);
  switch (measurement.kind) {
    case 'mark':
      return `The ${range} mark`;
    case 'speed':
      return `The chronograph reading at ${range}`;
    case 'drop':
      return `The drop at ${range}`;
  }
}

const percent = (chance: number): string =>
  chance < 0.001 ? 'under 0.1 %' : `${(100 * chance).toFixed(1)} %`;
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
