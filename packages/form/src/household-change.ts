/** The event an edit sends: its detail is the new household. */
export const HOUSEHOLD_CHANGE = 'unitbook-household-change';
