import type { Tariff } from '@unitbook/engine';
import type { TariffChoice } from '../../tariff-choice.ts';
import { openTariff } from '../../view/tariff-view.ts';

/** The other tariffs of a supplier: a bill may have been made by the wrong one. Tells when one is there. */
export class OtherTariffs {
  private opened: ReadonlyMap<TariffChoice, Tariff> = new Map();
  private readonly asked = new Set<TariffChoice>();
  private last: readonly Tariff[] = [];
  private readonly told: () => void;

  constructor(told: () => void) {
    this.told = told;
  }

  /** Fetch every choice once. */
  want(choices: readonly TariffChoice[]): void {
    for (const choice of choices) {
      if (this.asked.has(choice)) continue;
      this.asked.add(choice);
      void openTariff(choice.id, choices).then((view) => {
        if (view.kind !== 'open') return;
        this.opened = new Map(this.opened).set(choice, view.tariff.tariff);
        this.told();
      });
    }
  }

  /** Those of the supplier of a tariff, without itself; the same list as long as nothing of it has changed. */
  besides(tariff: Tariff | null): readonly Tariff[] {
    const { id, supplier } = tariff?.document ?? {};
    const list = [...this.opened.values()].filter(
      ({ document }) => document.supplier === supplier && document.id !== id,
    );
    const isSame = list.length === this.last.length && list.every((one, at) => one === this.last[at]);
    if (!isSame) this.last = list;
    return this.last;
  }
}
