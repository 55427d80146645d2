import type { Path } from '@unitbook/engine';

/** A field of a printed bill. */
export interface BillField {
  /** Where it stands in the bill. */
  readonly path: Path;
  readonly label: string;
  readonly hint?: string;
  readonly is: 'text' | 'day' | 'number' | 'credit';
  /** Decimals that a bill prints there at most: "1,158" with none of thousandths can only be grouped. */
  readonly places?: number;
  /** The figure that it is of; left out: it is compared with nothing. */
  readonly figure?: string;
  /** Whether a bill cannot be checked without it. */
  readonly isWanted?: boolean;
}

/** A part of a printed bill, in the order of paper. */
export interface BillGroup {
  readonly key: string;
  readonly title: string;
  readonly fields: readonly BillField[];
}

/** The id of the input of a field. */
export const billFieldId = (path: Path): string => `check-${path.join('-').replace(/[^\w-]+/g, '_')}`;

/** What a field is called in the middle of a sentence. */
export const inSentence = ({ label }: BillField): string => label.charAt(0).toLowerCase() + label.slice(1);
