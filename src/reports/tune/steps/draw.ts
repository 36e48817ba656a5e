import { type DrawLength, drawLength } from '../../../advice/tuning/draw-length.ts';
import { heightsAtSpeed, type MarkHeight } from '../../../advice/tuning/mark-heights.ts';
import type { DisplayUnits } from '../../../quantities/display-units.ts';
import { formatQuantity } from '../../../quantities/format.ts';
import { si } from '../../../quantities/quantity.ts';
import { powerStrokeOf, virtualMassPrior } from '../../../setup/assemble/assemble-launch.ts';
import { dataOf, exactRanges, type Field, tableOf } from '../../field.ts';
import { targetDigits } from '../../side-words.ts';
import { onTarget } from '../lengths.ts';
import { someRanges } from '../some-ranges.ts';
import { type Evening, type Logged, NO_MORE, needed, type StepAnswer } from '../step-answer.ts';

const HEIGHT_FIELDS: readonly Field<MarkHeight>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'height_m', name: 'high', unit: 'smallLength', digits: targetDigits, of: ({ height }) => height },
];

/** What the latest measurement of the draw says. */
export function drawAnswer({ session }: Evening, { entry }: Logged): StepAnswer {
  const { setup, calibration, assembly, units } = session;
  const { rig } = calibration;
  const stroke = powerStrokeOf(setup.bow);
  const mass = assembly.arrow.flying.mass + virtualMassPrior(setup.bow).value;
  const found = drawLength({
    measured: needed(entry.draw_length, 'draw_length'),
    match: needed(entry.match, 'match'),
    powerStroke: stroke,
    speed: rig.launchSpeed,
    energy: si((mass * rig.launchSpeed ** 2) / 2),
    peakDraw: setup.bow.peak_draw_weight ?? null,
    holdingWeight: entry.holding_weight ?? null,
    stopGap: entry.stop_gap ?? null,
  });
  const marks = heightsAtSpeed(rig, found.speedChange.scaled, someRanges(rig, units));
  return {
    ...NO_MORE,
    verdict: found.band,
    done: found.done,
    line: line(found, units, entry.stop_gap),
    paragraphs: [
      speedWords(found, units),
      ...(found.band === 'matched'
        ? []
        : ['Peep to pin and peep height change with the draw: measure both again after the change.']),
    ],
    tables: [
      tableOf(
        HEIGHT_FIELDS,
        marks,
        units,
        'With the match and the marks of now, arrows would hit high or low (-)',
      ),
    ],
    notes: [
      'Up to 1/8 in goes unnoticed and beyond 1/4 in is wrong (common practice, no source). The trade counts 10 ft/s ' +
        'for an inch.',
      'A gap at one stop is kept and not computed with: how the cams move the nock depends on their tracks and on the cables.',
    ],
    data: {
      difference_m: found.difference,
      band: found.band,
      speed_change_mps: found.speedChange,
      power_stroke_m: stroke,
      late_stop: entry.late_stop ?? null,
      stop_gap_m: entry.stop_gap ?? null,
      marks: dataOf(HEIGHT_FIELDS, marks),
    },
  };
}

function line({ difference, band }: DrawLength, units: DisplayUnits, gap: number | undefined): string {
  const size = onTarget(Math.abs(difference), units, 2);
  const off = `${size} ${difference < 0 ? 'shorter' : 'longer'} than the match`;
  const first = {
    matched: `Matched: the draw is ${difference === 0 ? 'as it should be' : off}.`,
    matters: `The draw is ${off}: that matters. Change it by the module or the cables, in a press.`,
    wrong: `The draw is ${off}: that is wrong for you. Change it by the module or the cables, in a press.`,
  }[band];
  const timing =
    gap === undefined || gap === 0
      ? ''
      : ' Both stops must touch together (common practice); the bow shop sets this, in a press.';
  return `${first}${timing}`;
}

function speedWords({ speedChange: { scaled, peak, creep } }: DrawLength, { speed }: DisplayUnits): string {
  const size = (change: number): string => formatQuantity(change, speed, 2);
  return [
    `Going to the match changes the speed by about ${size(scaled)}`,
    peak === null ? '' : `, at most ${size(peak)}`,
    creep === null ? '' : `; creeping off the wall by as much, ${size(creep)}`,
    '.',
  ].join('');
}
