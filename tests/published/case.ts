/** Where an expected figure comes from: read in a publication, worked out from a published rule, or from memory. */
type CaseKind = 'published' | 'constructed' | 'memory';

/** What a case is about. */
type CaseSubject = 'units' | 'bill' | 'identity' | 'arithmetic';

/** The publication that a figure or a rule was read in. */
export interface CaseSource {
  readonly title: string;
  readonly publisher: string;
  /** Four digits, a span of years, or "n.d.". */
  readonly year: string;
  /** A web address, a file of this project, or "none" where there is no publication. */
  readonly address: string;
}

/** A rounding as data. */
export interface CaseRounding {
  readonly step: string;
  readonly mode: string;
}

/** One use of the engine: the name of the call and what goes in. */
export interface CaseRun {
  /** Put before the names of what comes out, where a case has several runs. */
  readonly name?: string;
  readonly call: string;
  /** A file of `tariffs/`, or of the examples, by name. */
  readonly tariff?: string;
  readonly [key: string]: unknown;
}

/** A figure worked out from those that came out: exact, rounded only where it says so. */
export interface DerivedFigure {
  readonly name: string;
  readonly op: string;
  /** Names of figures, or decimals. */
  readonly of: readonly string[];
  readonly rounding?: CaseRounding;
}

/** One outside check. */
export interface PublishedCase {
  readonly id: string;
  readonly title: string;
  readonly source: CaseSource;
  readonly kind: CaseKind;
  readonly what: CaseSubject;
  readonly runs: readonly CaseRun[];
  readonly derived?: readonly DerivedFigure[];
  /** Exact texts by name. */
  readonly expected: Readonly<Record<string, string>>;
  readonly notes?: readonly string[];
}
