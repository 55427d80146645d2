/** What the page says of a field beyond the schema. */
export interface FieldWords {
  readonly meaning?: string;
  readonly form?: string;
  readonly unit?: string;
}
