import { type HitChance, hitChances, type Spread } from '../../advice/range/hit-chance.ts';
import { type GuessRoom, guessRoom } from '../../advice/range/misjudge.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs, present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { rangeColumn, rangeWords } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { formatQuantity, fromSi, symbolOf, toSi } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { archerSpread } from '../../setup/assemble/sideways-marks.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { cautionLines, shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import type { Session } from '../session.ts';

export interface MisjudgeOptions extends AnswerOptions {
  readonly ring: string;
  readonly from: string;
  readonly to: string;
  readonly every: string;
  readonly guess: string;
  readonly cant: string;
  readonly gusts: string;
}

interface MisjudgeFindings {
  readonly session: Session;
  readonly ring: Metres;
  readonly spread: Spread;
  readonly rows: readonly { readonly room: GuessRoom; readonly hit: HitChance }[];
}

export function runMisjudge(io: Io, path: string, options: MisjudgeOptions): void {
  const session = openNamedFile(io, path, options);
  const ring = optionQuantity('ring', options.ring, 'length');
  if (!(ring > 0))
    throw new QuestionError(`{ring}: ${options.ring} is no ring`, 'Write {ring} "8 in" or another size.');
  const ranges = optionRanges(options);
  const spread = spreadOf(session, options);
  const { rig } = session.calibration;
  const chances = hitChances(rig, ring, ranges, spread);
  const rows = guessRoom(rig, ring, ranges).flatMap((room, i) => {
    const hit = chances[i];
    return hit === undefined ? [] : [{ room, hit }];
  });
  const found: MisjudgeFindings = { session, ring, spread, rows };
  present(io, options, {
    text: () => text(found, io),
    json: () => json(found),
    table: () => table(found),
  });
}

/** A guess worse than this would reach nearer than marks go. */
const WORST_GUESS = 0.3;

function spreadOf(session: Session, { guess, cant, gusts }: MisjudgeOptions): Spread {
  const share = optionQuantity('guess', guess, 'ratio');
  const lean = optionQuantity('cant', cant, 'angle');
  const wind = optionQuantity('gusts', gusts, 'speed');
  if (!(share >= 0 && share <= WORST_GUESS))
    throw new QuestionError(`{guess}: ${guess} is out of reach`, 'Write 0 % to 30 % of the range.');
  if (!(lean >= 0 && wind >= 0))
    throw new QuestionError('{cant} and {gusts} are sizes', 'Write them without a minus sign.');
  return { guess: share, cant: lean, windAcross: wind, windAlong: wind, arrow: archerSpread(session) };
}

const json = ({ session, ring, spread, rows }: MisjudgeFindings): object => ({
  title: session.title,
  calibrated: session.calibrated,
  ring_m: ring,
  guess_sd_share: spread.guess,
  cant_sd_rad: spread.cant,
  wind_sd_mps: spread.windAcross,
  arrow_sd_per_range: spread.arrow,
  rows: rows.map(({ room, hit }) => ({
    range_m: room.range,
    short_m: room.short,
    long_m: room.long,
    height_per_guess: room.heightPerGuess,
    hit_chance: hit.chance,
    hit_chance_range_known: hit.without.guess,
    hit_chance_level: hit.without.cant,
    hit_chance_calm: hit.without.wind,
  })),
});

function table({ session: { units }, rows }: MisjudgeFindings): Table {
  const { range, smallLength } = units;
  const chance = { unit: '%', digits: 0 };
  return {
    columns: [
      rangeColumn(
        rows.map(({ room }) => room.range),
        units,
      ),
      { name: 'short', unit: symbolOf(range), digits: 1 },
      { name: 'long', unit: symbolOf(range), digits: 1 },
      {
        name: 'height a step off',
        unit: `${symbolOf(smallLength)}/${symbolOf(range)}`,
        digits: smallLength === 'in' ? 2 : 0,
      },
      { name: 'hits', ...chance },
      { name: 'range known', ...chance },
      { name: 'held level', ...chance },
      { name: 'no gusts', ...chance },
    ],
    rows: rows.map(({ room, hit }) => [
      fromSi(room.range, range),
      room.short === null ? null : fromSi(room.short, range),
      fromSi(room.long, range),
      fromSi(room.heightPerGuess, smallLength) / fromSi(1, range),
      100 * hit.chance,
      100 * hit.without.guess,
      100 * hit.without.cant,
      100 * hit.without.wind,
    ]),
  };
}

function plot({ session: { units }, rows }: MisjudgeFindings): Plot {
  const line = (name: string, of: (hit: HitChance) => number) => ({
    name,
    kind: 'line' as const,
    points: rows.map(({ hit }) => ({ x: fromSi(hit.range, units.range), y: 100 * of(hit) })),
  });
  return {
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'hits', unit: '%' },
    series: [
      line('all together', ({ chance }) => chance),
      line('range known', ({ without }) => without.guess),
    ],
    markers: [{ axis: 'y', at: 0, label: 'none' }],
  };
}

function firstLine({ session: { units }, ring, rows }: MisjudgeFindings): string {
  const last = rows.at(-1);
  if (last === undefined) return '';
  const { room, hit } = last;
  const inRange = (value: number): string => formatQuantity(value, units.range, 1);
  const short = room.short === null ? 'any amount short' : `${inRange(room.short)} short`;
  return `At ${rangeWords(room.range, units)} a guess may be ${short} or ${inRange(room.long)} long for a ring of ${formatQuantity(ring, units.smallLength, 1)}; with everything together ${(100 * hit.chance).toFixed(0)} % hit, with the range known ${(100 * hit.without.guess).toFixed(0)} %.`;
}

function text(found: MisjudgeFindings, io: Io): string {
  const { session, spread } = found;
  const { units } = session;
  const hundred = toSi(100, units.range);
  return paragraphs([
    firstLine(found),
    headLines(session).join('\n'),
    renderTableText(table(found)),
    plotText(plot(found), plotSize(io)),
    `short, long: the guess off by so much puts the arrow on the ring's edge; "-": no guess too short does, the highest mark still hits.
hits: of shots at the centre, guesses off by ${formatQuantity(spread.guess, '%', 0)} of the range, cants of ${formatQuantity(spread.cant, 'deg', 1)}, winds of ${formatQuantity(spread.windAcross, units.windSpeed, 1)} and one arrow's ${formatQuantity(spread.arrow * hundred, units.bowLength, 1)} at ${formatQuantity(hundred, units.range, 0)} (standard deviations).`,
    cautionLines(shotCautions(session)),
  ]);
}
