import type { FlyerDocument } from '@unitbook/engine';
import { BLANK_FLYER } from '../flyer/flyer-file.ts';
import type { BesidePart } from '../quote-desk.ts';

/** Whom to tell, and where the page is printed from. */
export interface BesideHost {
  readonly requestUpdate: () => void;
  readonly dataset: DOMStringMap;
}

/** Fetched when the part is opened for the first time: most quotes are made without them. */
const FETCH: Readonly<Record<BesidePart, () => Promise<void>>> = {
  flyer: async () => {
    (await import('../flyer/define-flyer.ts')).defineFlyer();
  },
  promise: async () => {
    (await import('../promise/define-promise.ts')).definePromise();
  },
};

/** What lies beside a quote: a rival's flyer, and the promise after the sale. */
export class Beside {
  /** As typed. */
  flyer: FlyerDocument = BLANK_FLYER;
  isFailed = false;
  private readonly wanted = new Set<BesidePart>();
  private readonly host: BesideHost;
  private readonly keep: () => void;

  /** @param keep  called when the flyer changed */
  constructor(host: BesideHost, keep: () => void) {
    this.host = host;
    this.keep = keep;
  }

  readonly setFlyer = (flyer: FlyerDocument): void => {
    this.flyer = flyer;
    this.keep();
    this.host.requestUpdate();
  };

  /** Fetch a part, once. */
  readonly want = (part: BesidePart): void => {
    if (this.wanted.has(part)) return;
    this.wanted.add(part);
    FETCH[part]().catch(() => {
      this.wanted.delete(part);
      this.isFailed = true;
      this.host.requestUpdate();
    });
  };

  /** Print one part alone, and not the quote. */
  readonly print = (part: BesidePart): void => {
    const { dataset } = this.host;
    dataset['print'] = part;
    window.print();
    delete dataset['print'];
  };
}
