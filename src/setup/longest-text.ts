/** Characters of a setup file: far more than a person writes, and it bounds the time and memory that a wrong file can take. */
export const LONGEST_TEXT = 262_144;
