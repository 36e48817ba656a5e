import type { ParameterEstimate } from '../../calibration/verdict.ts';
import type { Table } from '../../documents/table/table.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { Session } from '../session.ts';
import type { FitFindings } from './findings.ts';
import { parameterWords } from './parameter-words.ts';

/** The parameters that mean something for this sight: without a scale none has a reading. */
export const shownParameters = ({ assembly, calibration }: Session): readonly ParameterEstimate[] =>
  calibration.parameters.filter(({ name }) => assembly.rig.scale !== null || name !== 'scale_offset');

/** What was known of each parameter before and after the marks. */
export function parameterTable({ session }: FitFindings): Table {
  const words = parameterWords(session);
  return {
    columns: [
      { name: 'parameter', unit: '' },
      { name: 'unit', unit: '' },
      { name: 'value', unit: '' },
      { name: '±', unit: '' },
      { name: 'before', unit: '' },
      { name: '±', unit: '' },
      { name: 'verdict', unit: '' },
    ],
    rows: shownParameters(session).map(({ name, value, sd, priorValue, priorSd, verdict }) => {
      const { name: shown, unit, digits, value: of, spread } = words[name];
      const open = priorSd > WIDE_OPEN[name];
      const before = open ? 'unknown' : of(priorValue).toFixed(digits);
      return [
        shown,
        unit,
        of(value).toFixed(digits),
        spread(sd).toFixed(digits),
        before,
        open ? '' : spread(priorSd).toFixed(digits),
        verdict,
      ];
    }),
  };
}

/** A prior wider than this says nothing, and is shown as unknown. */
const WIDE_OPEN = {
  launch_speed: 100,
  drag_scale: 5,
  peep_height: 1,
  scale_ratio: 5,
  scale_offset: 50,
} as const;

/** Every shot mark beside what the calibrated model says of it. */
export function residualTable({ session, marks }: FitFindings): Table {
  const { range, smallLength } = session.units;
  const digits = smallLength === 'in' ? 2 : 0;
  return {
    columns: [
      { name: 'range', unit: symbolOf(range), digits: 1 },
      { name: 'reading', unit: 'scale', digits: 2 },
      { name: 'predicted', unit: 'scale', digits: 2 },
      { name: 'residual', unit: 'scale', digits: 2 },
      { name: 'on target', unit: symbolOf(smallLength), digits },
      { name: '±', unit: symbolOf(smallLength), digits },
      { name: 'studentised', unit: '', digits: 1 },
    ],
    rows: marks.map(({ residual, reading, predicted }) => [
      fromSi(residual.measurement.range, range),
      reading,
      predicted,
      reading - predicted,
      fromSi(residual.residual, smallLength),
      fromSi(residual.measurement.sd, smallLength),
      residual.studentised,
    ]),
  };
}
