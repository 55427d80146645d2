import type { TariffDocument } from '@unitbook/engine';
import type { TariffChoice } from '../../tariff-choice.ts';
import { openTariff, openTariffText, type RefusedTariff, type TariffView } from '../../view/tariff-view.ts';

type Chosen = string | TariffDocument;

/** The tariff of a quote as far as it is open; tells when that changes. */
export class OpenTariff {
  view: TariffView = { kind: 'none' };
  refused: RefusedTariff | null = null;
  private chosen: Chosen | null = null;
  private choices: readonly TariffChoice[] = [];
  private readonly told: () => void;

  constructor(told: () => void) {
    this.told = told;
  }

  /** Open a tariff, unless it is the one that lies open. */
  readonly want = (chosen: Chosen, choices: readonly TariffChoice[]): void => {
    if (chosen === this.chosen && choices === this.choices) return;
    this.chosen = chosen;
    this.choices = choices;
    this.view = { kind: chosen === '' ? 'none' : 'opening' };
    void openTariff(chosen, choices).then((view) => {
      if (this.chosen !== chosen) return;
      this.view = view;
      this.told();
    });
  };

  /** Read a tariff file. @returns its document; null where it cannot be used */
  readonly readFile = async (file: File): Promise<TariffDocument | null> => {
    const read = openTariffText(await file.text());
    this.refused = read.kind === 'wrong' ? { name: file.name, findings: read.findings } : null;
    this.told();
    return read.kind === 'open' ? read.tariff.tariff.document : null;
  };
}
