import type { MeterSink } from '../stream.ts';
import { OBIS_FINDINGS, obisFinding, type ObisFindingCode } from './obis-findings.ts';

/** Where something stands in a file, from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

type Values = Readonly<Record<string, string>>;

/** Hands findings on, and knows whether any was an error. */
export interface Teller {
  readonly tell: (code: ObisFindingCode, place: Place, values?: Values, offer?: string) => void;
  /** Tell a thing the first time only: the same is true of every line, and a file can have millions. */
  readonly tellOnce: (code: ObisFindingCode, place: Place, values?: Values) => void;
  readonly hasErrors: () => boolean;
}

/** Make a teller for one file. */
export function makeTeller(sink: MeterSink): Teller {
  const told = new Set<ObisFindingCode>();
  let errors = false;
  const tell: Teller['tell'] = (code, { line, column }, values, offer) => {
    if (OBIS_FINDINGS[code].severity === 'error') errors = true;
    const place = offer === undefined ? { path: [] } : { path: [], offer };
    sink.finding({ ...obisFinding(code, place, values), position: { line, column } });
  };
  const tellOnce: Teller['tellOnce'] = (code, place, values) => {
    if (told.has(code)) return;
    told.add(code);
    tell(code, place, values);
  };
  return { tell, tellOnce, hasErrors: () => errors };
}

const LONGEST_SHOWN = 60;

/** A piece of a file as a finding shows it: cut short, without characters that cannot be seen. */
export function shown(text: string): string {
  const cut = text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
  return cut.replace(/\p{C}/gu, '\ufffd');
}

const MOST_NAMED = 8;

/** Some names in a row, and how many more there are. */
export function named(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  const first = names.slice(0, MOST_NAMED).join(', ');
  return more > 0 ? `${first} and ${String(more)} more` : first;
}
