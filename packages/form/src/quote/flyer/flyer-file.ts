import { FLYER_CLAIMS, readFlyer, type Finding, type FlyerDocument } from '@unitbook/engine';
import { isFields, misfits, type Shape } from '../../household/shape.ts';

/** The form of a flyer's file that this version reads and writes. */
const FLYER_FORMAT = 'unitbook-flyer-1';

/** A flyer with nothing typed. */
export const BLANK_FLYER: FlyerDocument = { format: FLYER_FORMAT };

const TEXT: Shape = [];
const FLYER: Shape = {
  fields: {
    format: [FLYER_FORMAT],
    ...Object.fromEntries(['$schema', ...FLYER_CLAIMS, 'words'].map((key) => [`${key}?`, TEXT])),
  },
};

/** A text opened as a flyer, or why it cannot be. */
export type FlyerFile =
  | { readonly kind: 'flyer'; readonly flyer: FlyerDocument }
  | { readonly kind: 'refused'; readonly reason: string; readonly findings: readonly Finding[] };

const refused = (reason: string, findings: readonly Finding[] = []): FlyerFile => ({
  kind: 'refused',
  reason,
  findings,
});

function otherFormat(format: unknown): FlyerFile {
  if (typeof format !== 'string')
    return refused(`It does not say what it is. Expected: "format": "${FLYER_FORMAT}" at its beginning.`);
  return refused(`It is in the form “${format}”. Expected: “${FLYER_FORMAT}”. Open it where it belongs.`);
}

/**
 * Open the text of a flyer's file. Numbers that are half typed or wrong are opened as they are, and told of beside
 * their lines; what is not of the right form, or has keys that would not be looked at, is refused whole.
 *
 * @example
 * readFlyerFile('{').kind //=> "refused"
 * readFlyerFile('{"format":"unitbook-flyer-1","claimedSaving":"44 16"}').kind //=> "flyer"
 */
export function readFlyerFile(text: string): FlyerFile {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return refused('It is not JSON, or not whole. Save it once more where it comes from.');
  }
  if (!isFields(document) || document['format'] !== FLYER_FORMAT)
    return otherFormat(isFields(document) ? document['format'] : undefined);
  const unknown = readFlyer(text).findings.filter(({ code }) => code === 'document/unknown-key');
  const findings = [...misfits(document, FLYER, []), ...unknown];
  if (findings.length > 0) return refused('It is not a flyer as this page reads it:', findings);
  return { kind: 'flyer', flyer: document as unknown as FlyerDocument };
}

/**
 * A flyer as the text of a file.
 *
 * @param flyer  its numbers plain as far as they can be read; `read-typed-flyer.ts` makes it
 */
export function flyerText(flyer: FlyerDocument): string {
  return `${JSON.stringify(flyer, null, 2)}\n`;
}
