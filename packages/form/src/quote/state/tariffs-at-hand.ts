import type { Tariff, TariffDocument } from '@unitbook/engine';
import type { TariffChoice } from '../../tariff-choice.ts';
import { openTariff, openTariffText, type RefusedTariff, type TariffView } from '../../view/tariff-view.ts';

/** A tariff beside the one of the quote: one of the choices, or one from a file. */
export interface TariffAtHand {
  /** Names its tick box. */
  readonly key: string;
  readonly name: string;
  readonly isTicked: boolean;
  readonly view: TariffView;
}

type FromFile = Omit<TariffAtHand, 'isTicked'>;

const OPENING: TariffView = { kind: 'opening' };

/** Other tariffs than that of the quote: those ticked are compared with it, and each has rules that can be chosen. */
export class TariffsAtHand {
  refused: RefusedTariff | null = null;
  private ticked: ReadonlySet<string> = new Set();
  private files: readonly FromFile[] = [];
  private views: ReadonlyMap<TariffChoice, TariffView> = new Map();
  private last: readonly Tariff[] = [];
  private readonly told: () => void;

  constructor(told: () => void) {
    this.told = told;
  }

  /** Fetch the choices: those that are ticked, or all of them. */
  want(choices: readonly TariffChoice[], isAll: boolean): void {
    for (const choice of choices) {
      if (this.views.has(choice) || !(isAll || this.ticked.has(choice.id))) continue;
      this.views = new Map(this.views).set(choice, OPENING);
      void openTariff(choice.id, choices).then((view) => {
        this.views = new Map(this.views).set(choice, view);
        this.told();
      });
    }
  }

  /** Every tariff but the one that lies open: the choices in their order, then those from files. */
  list(choices: readonly TariffChoice[], open: string | TariffDocument): readonly TariffAtHand[] {
    const { ticked, views, files } = this;
    return [
      ...choices
        .filter(({ id }) => id !== open)
        .map((choice) => ({
          key: choice.id,
          name: choice.name,
          isTicked: ticked.has(choice.id),
          view: views.get(choice) ?? OPENING,
        })),
      ...files.map((own) => ({ ...own, isTicked: ticked.has(own.key) })),
    ];
  }

  /** The tariffs that are to be compared; the same list as long as nothing of it has changed. */
  compared(choices: readonly TariffChoice[], open: string | TariffDocument): readonly Tariff[] {
    const now = this.list(choices, open).flatMap(({ isTicked, view }) =>
      isTicked && view.kind === 'open' ? [view.tariff.tariff] : [],
    );
    const isSame = now.length === this.last.length && now.every((one, at) => one === this.last[at]);
    if (!isSame) this.last = now;
    return this.last;
  }

  readonly tick = (key: string, isOn: boolean): void => {
    const ticked = new Set(this.ticked);
    if (isOn) ticked.add(key);
    else ticked.delete(key);
    this.ticked = ticked;
    this.told();
  };

  /** Read a tariff file: it is compared at once. One of the same id takes the place of the one before. */
  readonly openFile = async (file: File): Promise<void> => {
    const view = openTariffText(await file.text());
    this.refused = view.kind === 'wrong' ? { name: file.name, findings: view.findings } : null;
    if (view.kind !== 'open') {
      this.told();
      return;
    }
    const { id, name } = view.tariff.tariff.document;
    const key = `file-${id}`;
    const own = { key, name: `${name} (its file)`, view };
    this.files = [...this.files.filter((one) => one.key !== key), own];
    this.tick(key, true);
  };
}
