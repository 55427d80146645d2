/** What every page says at its end. */
export const CAUTIONS = 'An estimate, not legal advice. Sealed meters and panels are for licensed people.';
/** What a page says besides where a plant is to be built. */
export const ROOF_CAUTIONS =
  'Work on a roof is work at height. The DC side of a plant is live in daylight, even when everything is switched off.';
