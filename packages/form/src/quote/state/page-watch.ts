/** What a watch tells of the page. */
export interface PageWatchers {
  /** Whether the charts have room to be drawn wide. */
  readonly widen: (isWide: boolean) => void;
  /** Whether two pages have room beside each other. */
  readonly spread: (isSpread: boolean) => void;
  /** The page is about to be printed, and nothing waits for it. */
  readonly print: () => void;
}

/** From so many pixels of the right page on the charts are drawn wide. */
const WIDE = 700;

/** Two pages lie beside each other from here on; the styles say the same. */
const SPREAD = '(min-width: 64rem)';

/** Watches how much room there is, and whether the page is printed. */
export class PageWatch {
  private readonly element: HTMLElement;
  private readonly watchers: PageWatchers;
  private readonly width: ResizeObserver;
  private readonly printing = window.matchMedia('print');
  private readonly spread = window.matchMedia(SPREAD);

  /**
   * @param element   its right page is measured
   * @param watchers  who is told
   */
  constructor(element: HTMLElement, watchers: PageWatchers) {
    this.element = element;
    this.watchers = watchers;
    this.width = new ResizeObserver(() => {
      // Drawn with the next frame: within this one another height would call the watch again.
      requestAnimationFrame(this.measure);
    });
  }

  get isSpread(): boolean {
    return this.spread.matches;
  }

  /** Begin to watch. */
  start(): void {
    this.width.observe(this.element);
    this.printing.addEventListener('change', this.onPrinting);
    this.spread.addEventListener('change', this.onSpread);
    window.addEventListener('beforeprint', this.watchers.print);
  }

  /** Watch no longer. */
  stop(): void {
    this.width.disconnect();
    this.printing.removeEventListener('change', this.onPrinting);
    this.spread.removeEventListener('change', this.onSpread);
    window.removeEventListener('beforeprint', this.watchers.print);
  }

  private readonly measure = (): void => {
    const page = this.element.shadowRoot?.querySelector('.results-page');
    this.watchers.widen((page?.clientWidth ?? 0) >= WIDE);
  };

  private readonly onSpread = ({ matches }: MediaQueryListEvent): void => {
    // A sheet of paper is narrow: what lies on the desk stays as it lies.
    if (!this.printing.matches) this.watchers.spread(matches);
  };

  /** Whoever prints by the browser's own command gets the quote on paper, too. */
  private readonly onPrinting = ({ matches }: MediaQueryListEvent): void => {
    if (matches) this.watchers.print();
  };
}
