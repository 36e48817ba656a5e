import type { Finding } from '../../calibration/diagnose.ts';
import { at } from '../../numerics/at.ts';
import { disagreementWords, otherUnitWords } from '../disagreement-words.ts';
import { measurementName } from '../measurement-name.ts';
import type { Session } from '../session.ts';
import { parameterWords } from './parameter-words.ts';

/** What stands out in a fit, in words an archer can act on. */
export function findingWords(session: Session, finding: Finding): string {
  const words = parameterWords(session);
  switch (finding.kind) {
    case 'no marks':
      return 'No marks yet: these numbers come from your measurements alone, so the uncertainties are large.';
    case 'one mark':
      return 'One mark alone cannot tell speed, drag and scale apart: it shifts all of them a little. Add one at long range.';
    case 'contradiction':
      return disagreementWords(session);
    case 'outlier': {
      const { measurement } = at(session.calibration.residuals, finding.index);
      return (
        `${capital(measurementName(session, measurement))} lies ${Math.abs(finding.studentised).toFixed(1)} standard ` +
        'errors away from the rest. Was the reading written down wrongly, the range misjudged, or the bow ' +
        'torqued? Shoot it again, or take it out and compare.'
      );
    }
    case 'one of several': {
      const names = finding.indices.map((index) =>
        measurementName(session, at(session.calibration.residuals, index).measurement),
      );
      return (
        `One of these hardly belongs with the rest, and the marks cannot tell which: ${names.join(', ')}. Check what ` +
        'was written, or shoot them again.'
      );
    }
    case 'other unit':
      return otherUnitWords(finding.written);
    case 'layer':
      return layerWords(finding.isLaminar, finding.chance);
    case 'at bound':
      return (
        `No bow explains these marks: the fit pushed ${words[finding.parameter].name} as far as it goes. ` +
        'Check for a reading or a range written down wrongly, and that the scale runs the way "increases" ' +
        'says.'
      );
    case 'scatter':
      return (
        `The marks scatter more than their groups explain (chance ${percent(finding.chance)}), so all errors ` +
        `below are widened ${finding.widening.toFixed(1)} times to match.`
      );
    case 'tied':
      return (
        `These marks cannot separate ${words[finding.parameter].name} from ${words[finding.to].name}: the ` +
        'tape is more certain than either number. A mark at a very different range, or a chronograph reading ' +
        'down range, would.'
      );
    case 'far from prior': {
      const { name } = words[finding.parameter];
      if (finding.parameter === 'speed_per_degree')
        return (
          `${capital(name)} came out ${Math.abs(finding.sds).toFixed(1)} standard errors from what is usual: was the bow ` +
          'changed between the warm and the cold days?'
        );
      return (
        `${capital(name)} came out ${Math.abs(finding.sds).toFixed(1)} standard errors from what was ` +
        'measured: measure it again.'
      );
    }
  }
}

/** Which of two drags a slim arrow came to have. */
function layerWords(isLaminar: boolean, chance: number): string {
  const told = `${isLaminar ? 'half of it' : 'the drag of its build-up'} (${(100 * chance).toFixed(0)} %)`;
  return [
    'A slim arrow with a smooth point at this speed has either the drag of its build-up or half of it,',
    'by the layer of air along the shaft.',
    ...(chance < TOLD_APART
      ? [
          `The marks do not tell which; the likelier is ${told}, and all errors below hold both.`,
          'A mark at long range, or a chronograph reading down range, would tell.',
        ]
      : [`The marks say ${told}.`]),
  ].join(' ');
}
/** From this chance on the marks are said to have told one from the other. */
const TOLD_APART = 0.95;

const percent = (chance: number): string =>
  chance < 0.001 ? 'under 0.1 %' : `${(100 * chance).toFixed(1)} %`;
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
