import { readDispute, type DisputeDocument, type Finding } from '@unitbook/engine';

/** A file of rules that was opened and cannot be used. */
export interface RefusedRules {
  readonly name: string;
  readonly findings: readonly Finding[];
}

/**
 * The rules by which bills are disputed: of a file that the reader opened, or of the invented place, which hold there
 * only. Tells when they are there.
 */
export class DisputeRules {
  refused: RefusedRules | null = null;
  private own: DisputeDocument | null = null;
  private invented: DisputeDocument | null = null;
  private asked: (() => Promise<string>) | null = null;
  private readonly told: () => void;

  constructor(told: () => void) {
    this.told = told;
  }

  /** Fetch the rules of the invented place once. */
  want(fetchText: (() => Promise<string>) | null): void {
    if (fetchText === null || fetchText === this.asked) return;
    this.asked = fetchText;
    void fetchText()
      .catch(() => '')
      .then((text) => {
        this.invented = readDispute(text).value;
        this.told();
      });
  }

  /**
   * The rules that a report goes by; null: none are known.
   *
   * @param isInvented  whether the bills are those of an invented place
   */
  of(isInvented: boolean): DisputeDocument | null {
    return this.own ?? (isInvented ? this.invented : null);
  }

  readonly openFile = async (file: File): Promise<void> => {
    const { value, findings } = readDispute(await file.text());
    this.refused = value === null ? { name: file.name, findings } : null;
    this.own = value ?? this.own;
    this.told();
  };
}
