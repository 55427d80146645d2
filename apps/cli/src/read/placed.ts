import { locate, type Finding, type SourceText } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';

/** A document as it was read from a file, or null. */
export interface Placed<Value> {
  readonly value: Value | null;
  /** Findings of later stages, each with the place in the file that it is about. */
  readonly place: (findings: readonly Finding[]) => readonly PlacedFinding[];
  readonly findings: readonly PlacedFinding[];
}

/** Put findings that know only the path into a document at its lines and columns. */
export function placedIn(subject: string, source: SourceText): Placed<never>['place'] {
  return (findings) =>
    about(
      subject,
      findings.map((finding) => locate(source, finding)),
    );
}
