import { INCH, STANDARD_GRAVITY } from '../../quantities/exact.ts';
import { type Kilograms, type Metres, type Newtons, si } from '../../quantities/quantity.ts';
import { meanOf, sampleSd } from './sample.ts';

/**
 * Upper ends of the bands of served diameters for a common nock, inches. 0.108 to 0.110 good, 0.112 high and 0.115 over are
 * common practice; the band between and those below are ours: as far below good as above. No source.
 */
const BANDS = [
  { band: 'too loose', below: 0.104 },
  { band: 'loose', below: 0.108 },
  { band: 'good', below: 0.11 },
  { band: 'snug', below: 0.112 },
  { band: 'high', below: 0.115 },
] as const;
const WIDEST = 'too tight';

export type NockBand = (typeof BANDS)[number]['band'] | typeof WIDEST;

/** The diameter that the bands are about. */
const USUAL_FIT: Metres = si(0.109 * INCH);
/** Of one reading of a caliper on a soft, uneven serving, m; assumed. */
const READING_SD = 0.0005 * INCH;
/** What the rounding of inches to metres may shift, m. */
const ROUNDING = 1e-9;

export interface NockQuestion {
  /** Diameters about the nock; at least one. */
  readonly serving: readonly Metres[];
  /** The diameter that is known to fit this nock, or null for the usual one. */
  readonly fitsAt: Metres | null;
  readonly arrowMass: Kilograms;
  /** Weights hung from the arrow: still held, and let go. */
  readonly held: Kilograms | null;
  readonly dropped: Kilograms | null;
}

export interface NockFit {
  readonly mean: Metres;
  readonly se: Metres;
  readonly band: NockBand;
  /** The bands a standard error below and above; `unsure` when they differ. */
  readonly lowBand: NockBand;
  readonly highBand: NockBand;
  readonly unsure: boolean;
  /** To the diameter of the serving thread; negative thinner. */
  readonly threadChange: Metres;
  /** Between which forces the nock lets go; null when no weight was hung. */
  readonly release: { readonly held: Newtons | null; readonly dropped: Newtons | null } | null;
  readonly done: boolean;
}

/**
 * How a nock fits its serving, by the mean of the readings.
 *
 * The differences between the bands are all that carries over to a nock that fits at another diameter. A serving is a bundle
 * and two threads, so the thread changes by half of what the diameter should.
 */
export function nockFit({ serving, fitsAt, arrowMass, held, dropped }: NockQuestion): NockFit {
  const mean = meanOf(serving);
  const fit = fitsAt ?? USUAL_FIT;
  const se = Math.hypot(READING_SD, sampleSd(serving)) / Math.sqrt(serving.length);
  const bandAt = (diameter: number): NockBand => bandOf(diameter - fit + USUAL_FIT);
  const [low, band, high] = [bandAt(mean - se), bandAt(mean), bandAt(mean + se)];
  const pull = (weight: Kilograms | null): Newtons | null =>
    weight === null ? null : si((arrowMass + weight) * STANDARD_GRAVITY);
  return {
    mean: si(mean),
    se: si(se),
    band,
    lowBand: low,
    highBand: high,
    unsure: low !== high,
    threadChange: si((fit - mean) / 2),
    release: held === null && dropped === null ? null : { held: pull(held), dropped: pull(dropped) },
    done: band === 'good' || band === 'snug',
  };
}

/** 0.110 in itself is good, 0.112 in high. */
const bandOf = (diameter: number): NockBand =>
  BANDS.find(({ band, below }) => {
    const limit = below * INCH;
    return band === 'good' ? diameter <= limit + ROUNDING : diameter < limit - ROUNDING;
  })?.band ?? WIDEST;
