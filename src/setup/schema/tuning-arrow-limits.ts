import type { Limit } from './limit.ts';
import { ON_TARGET } from './tuning-limits.ts';

const ARROW_MASS = {
  unit: 'gr',
  min: 100,
  max: 1500,
  why: 'A lighter arrow would wreck a bow, and nobody shoots a heavier one.',
} as const;
const BALANCE = {
  unit: 'in',
  min: 8,
  max: 40,
  why: 'The balance point lies ahead of the middle of the arrow.',
} as const;
const GROUP_ARROWS = {
  what: 'number of arrows in that group',
  unit: '1',
  min: 1,
  max: 50,
  example: 3,
  why: 'A group has at least one arrow, and nobody shoots more before a look.',
  whole: true,
} as const;

/** What an entry of the tuning log may hold about groups of bare and fletched arrows, and about the arrows themselves. */
export const TUNING_ARROW_LIMITS = {
  'tuning.log.fletched.arrows': GROUP_ARROWS,
  'tuning.log.fletched.lateral': { what: 'middle of that group right of the aim', example: 0, ...ON_TARGET },
  'tuning.log.fletched.vertical': { what: 'middle of that group above the aim', example: 0, ...ON_TARGET },
  'tuning.log.bare.arrows': GROUP_ARROWS,
  'tuning.log.bare.lateral': { what: 'middle of that group right of the aim', example: 5, ...ON_TARGET },
  'tuning.log.bare.vertical': { what: 'middle of that group above the aim', example: 0.5, ...ON_TARGET },
  'tuning.log.fletched_mass': {
    what: 'mass of the fletched arrow',
    otherwise: 'that of the arrow above',
    example: 446,
    ...ARROW_MASS,
  },
  'tuning.log.fletched_balance': {
    what: 'balance point of the fletched arrow from the groove of the nock',
    otherwise: 'that of the arrow above',
    example: 17.9,
    ...BALANCE,
  },
  'tuning.log.bare_mass': { what: 'mass of the bare shaft without tape', example: 427, ...ARROW_MASS },
  'tuning.log.bare_balance': {
    what: 'balance point of the bare shaft without tape, from the groove of the nock',
    example: 18.61,
    ...BALANCE,
  },
  'tuning.log.set': {
    what: 'how many of the arrows are to be shot together',
    otherwise: 'all of them',
    unit: '1',
    min: 2,
    max: 24,
    example: 6,
    why: 'A set is two arrows or more, and no quiver holds more than these.',
    whole: true,
  },
  'tuning.log.measured.mass': { what: 'mass of one arrow', example: 449.1, ...ARROW_MASS },
  'tuning.log.measured.runout': {
    what: 'how far the middle of the shaft runs out as it turns, from its highest to its lowest',
    unit: 'in',
    min: 0,
    max: 0.1,
    example: 0.002,
    why: 'A shaft more crooked than that is bent.',
  },
  'tuning.log.measured.deflection': {
    what: 'static deflection of that shaft in thousandths of an inch; kept, not computed with',
    unit: '1',
    min: 100,
    max: 2500,
    example: 300,
    why: 'No shaft is stiffer or weaker.',
  },
} as const satisfies Record<string, Limit>;
