/** The reason of an error that says: the marks could not be fitted. */
export const FIT_NOT_CONVERGED = 'fit-not-converged';
