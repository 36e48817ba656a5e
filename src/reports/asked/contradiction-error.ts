/**
 * What was measured contradicts itself, so that nothing is made of it to be cut out or taken along: what is wrong, in words,
 * and the option that makes it all the same.
 */
export class ContradictionError extends Error {
  readonly code = 'contradiction';

  /** @param message what is wrong, whole sentences */
  constructor(message: string) {
    super(message);
    this.name = 'ContradictionError';
  }
}
