import { findings } from '../../calibration/diagnose.ts';
import type { Residual } from '../../calibration/fit.ts';
import { markUncertainty } from '../../calibration/mark-uncertainty.ts';
import { type NextRange, nextRange } from '../../calibration/next-range.ts';
import { PARAMETERS } from '../../calibration/parameters.ts';
import type { Plot } from '../../documents/plot-data.ts';
import { renderTableText } from '../../documents/render/text.ts';
import type { Table } from '../../documents/table.ts';
import { plotText } from '../../documents/terminal-plot.ts';
import { formatQuantity, fromSi, symbolOf, toSi } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { defaultOf } from '../../setup/defaults.ts';
import { marksFor } from '../../sight/marks.ts';
import type { AnswerOptions } from '../commands/shared-options.ts';
import { headLines } from '../describe.ts';
import { findingWords } from '../finding-words.ts';
import type { Io } from '../io.ts';
import { openSetup, type Session } from '../open-setup.ts';
import { optionRanges } from '../option-quantity.ts';
import { parameterWords } from '../parameter-words.ts';
import { plotSize } from '../plot-size.ts';
import { paragraphs, present } from '../present.ts';

export interface FitOptions extends AnswerOptions {
  readonly from: string;
  readonly to: string;
}

/** The group to be shot next is thought of as this many arrows. */
const NEXT_ARROWS = 6;
/** Candidates for the next range stand this far apart, in the range unit. */
const STEP = 5;

/** A shot mark in the units of the scale. */
interface MarkResidual {
  readonly residual: Residual;
  readonly reading: number;
  readonly predicted: number;
}

interface Fit {
  readonly session: Session;
  readonly marks: readonly MarkResidual[];
  readonly others: readonly Residual[];
  readonly next: NextRange;
  readonly ranges: readonly Metres[];
}

export function runFit(io: Io, path: string, options: FitOptions): void {
  const session = openSetup(io, path, options);
  const { residuals } = session.calibration;
  const ranges = optionRanges({
    ...options,
    every: formatQuantity(toSi(STEP, session.units.range), session.units.range, 0),
  });
  const fit: Fit = {
    session,
    marks: residuals.flatMap((residual) => markResidual(session, residual)),
    others: residuals.filter(({ measurement }) => measurement.kind !== 'mark'),
    next: nextRange(session.calibration, ranges, {
      arrows: NEXT_ARROWS,
      arrowSdPerRange: defaultOf('marks.arrow_spread'),
    }),
    ranges,
  };
  present(io, options, { text: () => text(fit, io), json: () => json(fit), table: () => residualTable(fit) });
}

/** A miss of height says what the reading should have been, through how far a unit of the scale moves the hit. */
function markResidual({ calibration }: Session, residual: Residual): readonly MarkResidual[] {
  const { measurement } = residual;
  const { rig } = calibration;
  if (measurement.kind !== 'mark' || rig.scale === null) return [];
  const [mark] = marksFor(rig, [measurement.range]).marks;
  const heightPerUnit = (mark?.heightPerTravel ?? Number.NaN) * rig.scale.travelPerUnit * rig.scale.direction;
  return [
    {
      residual,
      reading: measurement.reading,
      predicted: measurement.reading + residual.residual / heightPerUnit,
    },
  ];
}

function json({ session, marks, others, next }: Fit): object {
  const { calibration } = session;
  return {
    title: session.title,
    calibrated: session.calibrated,
    chi_squared: calibration.chiSquared,
    measurements: calibration.residuals.length,
    chance: calibration.chance,
    widening: calibration.widening,
    parameters: calibration.parameters.map((parameter) => ({
      name: parameter.name,
      unit: parameter.unit,
      value: parameter.value,
      sd: parameter.sd,
      prior_value: parameter.priorValue,
      prior_sd: parameter.priorSd,
      verdict: parameter.verdict,
    })),
    correlations: calibration.correlations,
    residuals: marks.map(({ residual, reading, predicted }) => ({
      range_m: residual.measurement.range,
      reading,
      predicted,
      residual: reading - predicted,
      on_target_m: residual.residual,
      on_target_sd_m: residual.measurement.sd,
      studentised: residual.studentised,
    })),
    others: others.map(({ measurement, residual, studentised }) => ({
      kind: measurement.kind,
      range_m: measurement.range,
      residual,
      sd: measurement.sd,
      studentised,
    })),
    findings: findings(calibration),
    next_range_m: next.range,
    rms_on_target_now_m: next.rmsNow,
    rms_on_target_after_m: next.rmsAfter,
  };
}

function parameterTable({ session }: Fit): Table {
  const words = parameterWords(session);
  const { parameters } = session.calibration;
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
    rows: parameters
      .filter(({ name }) => session.assembly.rig.scale !== null || name !== 'scale_offset')
      .map(({ name, value, sd, priorValue, priorSd, verdict }) => {
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

function residualTable({ session, marks }: Fit): Table {
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

function residualPlot({ session, marks }: Fit): Plot {
  const { range, smallLength } = session.units;
  return {
    x: { label: 'range', unit: symbolOf(range) },
    y: { label: 'observed less predicted', unit: symbolOf(smallLength) },
    series: [
      {
        name: 'shot marks, ± one standard uncertainty',
        kind: 'points',
        points: marks.map(({ residual: { measurement, residual } }) => ({
          x: fromSi(measurement.range, range),
          y: fromSi(residual, smallLength),
          error: fromSi(measurement.sd, smallLength),
        })),
      },
    ],
    markers: [{ axis: 'y', at: 0, label: 'the model' }],
  };
}

function otherLines({ session, others }: Fit): string {
  const { units } = session;
  return others
    .map(({ measurement, residual, studentised }) => {
      const range = formatQuantity(measurement.range, units.range, 0);
      const off =
        measurement.kind === 'speed'
          ? formatQuantity(residual, units.speed, 1)
          : formatQuantity(residual, units.smallLength, 2);
      return `${measurement.kind === 'speed' ? 'Speed' : 'Drop'} at ${range}: ${off} from the model, ${studentised.toFixed(1)} standard errors.`;
    })
    .join('\n');
}

function tapeLine({ session, ranges }: Fit): string {
  const { units, calibration } = session;
  const sure = markUncertainty(calibration, ranges);
  const at = (i: number): string => {
    const mark = sure.at(i);
    return mark === undefined
      ? ''
      : `${formatQuantity(mark.onTargetSd, units.smallLength, 1)} at ${formatQuantity(mark.range, units.range, 0)}`;
  };
  return `The marks are good to ± ${at(0)}, ${at(Math.floor(sure.length / 2))} and ${at(-1)} on the target (one standard uncertainty).`;
}

function nextLine({ session, next }: Fit): string {
  const { units } = session;
  return `Shoot next at ${formatQuantity(next.range, units.range, 0)}: ${NEXT_ARROWS} arrows there would bring the average error of the marks from ${formatQuantity(next.rmsNow, units.smallLength, 1)} to ${formatQuantity(next.rmsAfter, units.smallLength, 1)}.`;
}

const text = (fit: Fit, io: Io): string =>
  paragraphs([
    findings(fit.session.calibration)
      .map((finding) => findingWords(fit.session, finding))
      .join('\n'),
    tapeLine(fit),
    headLines(fit.session).join('\n'),
    renderTableText(parameterTable(fit)),
    correlationLine(fit),
    fit.marks.length === 0 ? '' : renderTableText(residualTable(fit)),
    fit.marks.length === 0 ? '' : plotText(residualPlot(fit), plotSize(io)),
    otherLines(fit),
    nextLine(fit),
  ]);

/** The strongest tie between two parameters, when it is strong. */
function correlationLine({ session }: Fit): string {
  const { correlations } = session.calibration;
  const words = parameterWords(session);
  const pairs = PARAMETERS.flatMap((a, i) =>
    PARAMETERS.slice(i + 1).map((b, k) => ({ a, b, value: correlations[i]?.[i + 1 + k] ?? 0 })),
  );
  const strongest = pairs.toSorted((p, q) => Math.abs(q.value) - Math.abs(p.value))[0];
  if (strongest === undefined || Math.abs(strongest.value) < STRONG) return '';
  return `Strongest correlation: ${words[strongest.a].name} with ${words[strongest.b].name}, ${strongest.value.toFixed(2)}.`;
}
const STRONG = 0.5;
