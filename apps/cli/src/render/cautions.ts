/** What every page says at its end. */
export const CAUTIONS = 'An estimate, not legal advice. Sealed meters and panels are for licensed people.';
