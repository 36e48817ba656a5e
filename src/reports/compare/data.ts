import { FACTS, ROW_VALUES } from '../../advice/builds/build-readings.ts';
import { type Contrast, type Difference, REAL, relativeStiffness } from '../../advice/builds/comparison.ts';
import { standardError } from '../../advice/builds/error-form.ts';
import type { Uncertain, UncertainReadings } from '../../advice/builds/uncertain-readings.ts';
import type { PairedGroup } from '../../advice/scatter/paired-groups.ts';
import { reynoldsNumber } from '../../atmosphere/reynolds-number.ts';
import { efficiency, speedPerMass } from '../../bow/energy.ts';
import { at } from '../../numerics/at.ts';
import { entersWind } from '../not-measured.ts';
import { choiceData } from './choice.ts';
import { datumBy, FACT_FIELDS, ROW_FIELDS } from './fields.ts';
import { buildsOf, type CompareFindings } from './findings.ts';

/** Share of chance within the limit at which a difference is called real. */
const CONFIDENCE = 0.95;

export function compareData(found: CompareFindings): object {
  const { session, sessions, comparison, groups } = found;
  const { base, others, questions } = comparison;
  const { energy } = base.build;
  return {
    title: session.title,
    calibrated: sessions.some(({ calibrated }) => calibrated),
    confidence: CONFIDENCE,
    standard_errors_to_be_real: REAL,
    crosswind_mps: questions.crosswind,
    ring_m: questions.ring,
    zero_range_m: base.build.rig.zeroRange,
    bow: {
      energy_J: energy.energy,
      virtual_mass_kg: energy.virtualMass,
      log_covariance: energy.logCovariance,
      virtual_mass_from: energy.virtualMassFrom,
      efficiency: efficiency(energy, base.build.arrow.flying.mass).value,
      speed_per_mass_mpspkg: speedPerMass(energy, base.build.arrow.flying.mass).value,
      speed_per_mass_sd_mpspkg: speedPerMass(energy, base.build.arrow.flying.mass).sd,
    },
    builds: buildsOf(comparison).map((readings, i) =>
      buildData(questions.ranges, readings, groups[i] ?? null),
    ),
    choice: choiceData(found),
    differences: others.map((contrast, i) =>
      contrastData(questions.ranges, base.build.name, contrast, groups[i + 1] ?? null),
    ),
  };
}

type Paired = readonly PairedGroup[] | null;

function buildData(
  ranges: readonly number[],
  { build, facts, rows, guesses }: UncertainReadings,
  groups: Paired,
): object {
  const { conditions, launchSpeed } = build.rig;
  const reynolds = reynoldsNumber(conditions.air, launchSpeed, conditions.arrow.diameter);
  return {
    name: build.name,
    speed_from: build.speedFrom,
    wind_entry_counted: entersWind(build.rig.conditions.arrow),
    ...datumBy(FACT_FIELDS, FACTS, facts, numberOf),
    sd: datumBy(FACT_FIELDS, FACTS, facts, errorOf),
    drag_terms: (build.arrow.dragTerms?.(build.arrow.boundaryLayer, reynolds) ?? []).map(
      ({ name, coefficient }) => ({ name, coefficient }),
    ),
    rows: rows.map((row, i) => ({
      range_m: at(ranges, i),
      ...datumBy(ROW_FIELDS, ROW_VALUES, row, numberOf),
      guess_short_m: guesses[i]?.short ?? null,
      guess_long_m: guesses[i]?.long ?? null,
      group_m: groups?.[i]?.group ?? null,
      sd: datumBy(ROW_FIELDS, ROW_VALUES, row, errorOf),
    })),
  };
}

const numberOf = (found: Uncertain | null): number | null => found?.value ?? null;
const errorOf = (found: Uncertain | null): number | null =>
  found === null ? null : standardError(found.error);

function contrastData(
  ranges: readonly number[],
  against: string,
  contrast: Contrast,
  groups: Paired,
): object {
  const { readings, facts, rows } = contrast;
  return {
    name: readings.build.name,
    against,
    ...datumBy(FACT_FIELDS, FACTS, facts, differenceData),
    relative_stiffness: relativeStiffness(contrast)?.free ?? null,
    relative_stiffness_pushed: relativeStiffness(contrast)?.pushed ?? null,
    rows: rows.map((row, i) => ({
      range_m: at(ranges, i),
      with_base_mark_m: differenceData(row.withBaseMark),
      group_m: differenceData(groups?.[i]?.difference ?? null),
      ...datumBy(ROW_FIELDS, ROW_VALUES, row, differenceData),
    })),
  };
}

const differenceData = (found: Difference | null): object | null =>
  found === null
    ? null
    : { difference: found.value, sd: found.sd, real: found.real, error_mostly_from: found.mostly };
