import 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** The zone that this run of the node tests is in. */
    timeZone: string;
    /** Where the built page is served, for page tests. */
    pageUrl: string;
  }
}
